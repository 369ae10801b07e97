package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Carried;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Estimate;
import rasterfit.gear.Format;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.match.Measures;
import rasterfit.match.route.Run;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * What an analog signal passes before it is digitised or shown: amplifier, cable, input filter. Bandwidths combine by
 * their rise times, t = √Σ(0.35/B)² (common practice for first-order low-passes in a row).
 *
 * @param run the links up to there; a plain lead has the assumed bandwidth
 * @param taken what the input says of the format that arrives; absent where it says nothing
 * @param digitiser absent where the signal goes to a tube or an analog input of a display
 */
public record SignalChain(
        SourceOutput output,
        Run run,
        @Nullable Carried taken,
        @Nullable Digitiser digitiser) {
    private static final double RISE_TIME_FACTOR = 0.35;

    /** Bandwidths in hertz of each part, in signal order. */
    public List<Estimate> bandwidthsHz(Mode mode) {
        List<Estimate> parts = new ArrayList<>();
        parts.add(output.bandwidthHz()
                .orAssume(Assumptions.sourceBandwidthHz(mode.dotClock().hz())));
        if (run.isPlain()) {
            parts.add(Assumptions.CABLE_BANDWIDTH_HZ);
        }
        for (Link link : run.links()) {
            parts.add(link.bandwidthHz().orAssume(Assumptions.CABLE_BANDWIDTH_HZ));
        }
        parts.addAll(decoding().lumaBandwidthsHz(mode));
        if (digitiser != null && !digitiser.lowPass().isEmpty()) {
            Rational widest = digitiser.lowPass().get(0).hz();
            for (Frequency cutOff : digitiser.lowPass()) {
                widest = widest.max(cutOff.hz());
            }
            parts.add(new Estimate(widest, widest, widest, false));
        }
        return parts;
    }

    Decoding decoding() {
        return new Decoding(run.arriving(), taken);
    }

    /** Rise time of the whole chain in seconds, with typical bandwidths. */
    public double riseTimeSeconds(Mode mode) {
        double squares = 0;
        for (Estimate part : bandwidthsHz(mode)) {
            double rise = RISE_TIME_FACTOR / part.typical().toDouble();
            squares += rise * rise;
        }
        return Math.sqrt(squares);
    }

    /** Peak-to-peak jitter of the sampling instants in seconds. */
    public double jitterSeconds() {
        double nanos = digitiser == null
                ? 0
                : digitiser
                        .clockJitterNs()
                        .orAssume(Assumptions.DIGITISER_JITTER_NS)
                        .typical()
                        .toDouble();
        SyncKind sync = run.arriving().sync();
        if (sync != null && sync.rides()) {
            nanos += Assumptions.SYNC_SEPARATOR_JITTER_NS.typical().toDouble();
        }
        return nanos * 1e-9;
    }

    /**
     * How much of the dots' detail the link carries: min(1, 2·B / dot clock) for luma; chroma the same on RGB, half of
     * the bandwidth on YPbPr (common practice), that of the encoding on composite kinds, which also lose a share for each
     * flaw that the decoder leaves.
     */
    public Measures.Detail detail(Mode mode, Steps steps) {
        double bandwidth = RISE_TIME_FACTOR / riseTimeSeconds(mode);
        // Whole hertz: the figure rests on typical bandwidths and is no more exact than that.
        Frequency total = Frequency.ofHz(Math.round(bandwidth));
        Rational luma = ratio(total.hz(), mode);
        Rational chroma = ratio(chromaHz(total.hz()), mode);
        Rational flaws = decoding().factor(mode);
        Rational combined = luma.times(Rational.of(6, 10))
                .plus(chroma.times(Rational.of(4, 10)))
                .times(flaws);
        steps.tell("linkBandwidth", step -> {
            List<Estimate> parts = bandwidthsHz(mode);
            for (int i = 0; i < parts.size(); i++) {
                step.in("B" + (i + 1), parts.get(i).typical(), "Hz");
            }
            step.by("1 / √Σ(1/B)²", "common practice: rise times 0.35/B add in squares")
                    .gives(total.hz(), "Hz");
        });
        steps.tell(
                "linkDetail",
                step -> step.in("B", total.hz(), "Hz")
                        .in("dot clock", mode.dotClock().hz(), "Hz")
                        .in("luma", luma, "")
                        .in("chroma", chroma, "")
                        .in("flaws", flaws, "")
                        .by(
                                "luma = min(1, 2·B / dot clock); (0.6·luma + 0.4·chroma)·flaws",
                                "Nyquist; weights, 0.85 for each flaw that is left: assumption")
                        .gives(combined, ""));
        return new Measures.Detail(total, luma, chroma, combined);
    }

    private Rational chromaHz(Rational totalHz) {
        if (decoding().applies()) {
            return totalHz.min(Assumptions.CHROMA_BANDWIDTH_HZ.typical());
        }
        boolean isHalved = output.format() == Format.YPBPR || run.arriving().format() == Format.YPBPR;
        return isHalved ? totalHz.dividedBy(2) : totalHz;
    }

    private static Rational ratio(Rational bandwidthHz, Mode mode) {
        return bandwidthHz.times(2).dividedBy(mode.dotClock().hz()).min(Rational.ONE);
    }
}
