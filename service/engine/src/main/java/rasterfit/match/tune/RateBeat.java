package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * What becomes of motion when source and output run at different field rates.
 *
 * @param beatHz |f_in − f_out|: fields dropped or repeated per second; 0 for a locked output
 * @param tears whether a single field store makes the picture tear
 * @param wholeFrame whether the output shows frames of an interlaced source, not fields
 */
record RateBeat(Rational beatHz, boolean tears, boolean wholeFrame) {
    static RateBeat locked(boolean wholeFrame) {
        return new RateBeat(Rational.ZERO, false, wholeFrame);
    }

    static RateBeat free(Frequency in, Frequency out, int fieldStores, boolean wholeFrame, Steps steps) {
        Rational beat = in.hz().minus(out.hz()).abs();
        if (beat.signum() != 0) {
            steps.tell(
                    "dropOrRepeatEverySeconds",
                    step -> step.in("f_in", in.hz(), "Hz")
                            .in("f_out", out.hz(), "Hz")
                            .by("1 / |f_in − f_out|", "arithmetic")
                            .gives(beat.reciprocal(), "s"));
        }
        return new RateBeat(beat, fieldStores == 1 && beat.signum() != 0, wholeFrame);
    }

    /** Absent where nothing is ever dropped or repeated. */
    @Nullable
    Rational everySeconds() {
        return beatHz.signum() == 0 ? null : beatHz.reciprocal();
    }
}
