package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Carried;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Estimate;
import rasterfit.gear.Format;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Separation;
import rasterfit.quantity.Rational;
import rasterfit.rule.Signal;

/**
 * What a composite kind of signal loses in the decoder (common practice; figures are assumptions where not stated). A comb
 * tells luma from chroma only if the subcarrier turns over from line to line, that is, if a line holds a whole number of
 * its cycles and a half.
 *
 * @param signal as it arrives at the decoder
 * @param taken what the input says of this format; absent where it says nothing
 */
record Decoding(Signal signal, @Nullable Carried taken) {
    private static final Rational HALF = Rational.of(1, 2);

    /** For each flaw that stays in the picture; our own figure (assumption). */
    private static final Rational FLAW = Rational.of(85, 100);

    boolean applies() {
        return signal.format().hasColourEncoding();
    }

    /** Luma bandwidths of channel and decoder in hertz, in signal order; none for Y/C. */
    List<Estimate> lumaBandwidthsHz(Mode mode) {
        List<Estimate> parts = new ArrayList<>();
        if (signal.format() == Format.RF) {
            parts.add(Assumptions.channelBandwidthHz(is525(mode)));
        }
        if (isComposite() && !combs(mode)) {
            parts.add(Assumptions.NOTCH_BANDWIDTH_HZ);
        }
        return parts;
    }

    /** Cycles of the subcarrier in a line; empty where there is no single subcarrier. */
    Optional<Rational> cyclesPerLine(Mode mode) {
        ColourEncoding encoding = signal.encoding();
        return encoding == null
                ? Optional.empty()
                : encoding.subcarrier().map(subcarrier -> subcarrier.ratioTo(mode.lineRate()));
    }

    /**
     * Colour in fine luma, which neither a notch nor a comb on such a signal removes; and a comb that does not apply
     * leaves the subcarrier in the luma too.
     */
    int flaws(Mode mode) {
        if (!isComposite() || combs(mode)) {
            return 0;
        }
        return hasComb() ? 2 : 1;
    }

    Rational factor(Mode mode) {
        Rational factor = Rational.ONE;
        for (int flaw = 0; flaw < flaws(mode); flaw++) {
            factor = factor.times(FLAW);
        }
        return factor;
    }

    private boolean combs(Mode mode) {
        return hasComb()
                && cyclesPerLine(mode)
                        .map(cycles -> cycles.minus(Rational.of(cycles.floor())).equals(HALF))
                        .orElse(false);
    }

    private boolean hasComb() {
        return taken != null && taken.separation() == Separation.COMB;
    }

    private boolean isComposite() {
        return signal.format() == Format.CVBS || signal.format() == Format.RF;
    }

    private boolean is525(Mode mode) {
        ColourEncoding encoding = signal.encoding();
        return encoding == null ? mode.lineStandard() != LineStandard.L625_50 : encoding.is525();
    }
}
