package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.List;
import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.gear.Mode;
import rasterfit.match.Measures;
import rasterfit.quantity.Rational;
import rasterfit.sim.FreeRunSim;
import rasterfit.sim.Scan;

/** Fields that an output with a clock of its own drops or shows twice, counted over many seconds. */
final class Rates {
    /** Two minutes and more at 60 Hz: a dozen beats of 60.0985 Hz against 60, twenty against 59.94. */
    private static final int FRAMES = 8000;

    private Rates() {}

    static void objections(
            Group group, Mode mode, Measures claims, Simulated simulated, List<Objection> objections) {
        Rational claimed = claims.dropOrRepeatEverySeconds();
        BigFraction expected = BigFraction.ZERO;
        BigFraction counted = BigFraction.ZERO;
        if ("FREE_RUNNING".equals(group.setting().settings().rateLock())) {
            BigFraction frame = fraction(Objects.requireNonNull(
                                    group.setting().settings().outputFieldRate())
                            .hz())
                    .reciprocal();
            counted = BigFraction.of(count(mode, frame, simulated));
            BigFraction seconds = frame.multiply(FRAMES - 1);
            expected = claimed == null ? BigFraction.ZERO : seconds.divide(fraction(claimed));
        } else if (claimed != null) {
            objections.add(new Objection("dropOrRepeatEverySeconds", claimed, null));
        }
        // A count is whole and begins and ends anywhere in a beat: one off at either end.
        if (expected.subtract(counted).abs().subtract(BigFraction.ONE).signum() > 0) {
            objections.add(new Objection("dropOrRepeatEverySeconds", claimed, counted + " in " + FRAMES + " frames"));
        }
        boolean tears = Objects.equals(claims.fieldStores(), 1) && claimed != null;
        BigFraction drift = claims.tearDriftPicturesPerSecond() == null
                ? BigFraction.ZERO
                : fraction(claims.tearDriftPicturesPerSecond());
        // A tear has wandered over the whole picture when the rates have come apart by one field.
        BigFraction beats = tears ? fraction(Objects.requireNonNull(claimed)).reciprocal() : BigFraction.ZERO;
        if (!drift.equals(beats)) {
            objections.add(new Objection("tearDriftPicturesPerSecond", drift, beats));
        }
    }

    /** One line and one row will do. */
    private static long count(Mode mode, BigFraction frame, Simulated simulated) {
        FreeRunSim.StoredOutcome outcome = simulated.wholeFields(new FreeRunSim.Setup(
                fraction(mode.fieldRate().hz()).reciprocal(),
                fraction(mode.linesPerField()),
                0,
                1,
                Scan.PROGRESSIVE,
                frame,
                1,
                0,
                1,
                0,
                BigFraction.ZERO,
                FRAMES));
        return Math.max(outcome.dropped(), outcome.repeated());
    }
}
