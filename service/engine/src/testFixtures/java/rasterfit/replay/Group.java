package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.SinkLimits;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Rational;

/** The modes that share a setting, and the facts of the gear that this setting makes use of. */
record Group(Chain chain, List<Mode> modes, ModeSetting setting) {
    private static final BigFraction FOUR_TO_THREE = BigFraction.of(4, 3);

    static Group of(Chain chain, List<Mode> all, ModeSetting setting) {
        List<Mode> modes = setting.modes().stream()
                .map(name -> all.stream()
                        .filter(mode -> mode.name().equals(name))
                        .findFirst()
                        .orElseThrow())
                .toList();
        return new Group(chain, modes, setting);
    }

    /** The mode with the greatest share, the first of equals. */
    Mode lead() {
        Mode lead = modes.get(0);
        for (Mode mode : modes) {
            lead = mode.share().isGreaterThan(lead.share()) ? mode : lead;
        }
        return lead;
    }

    int fields() {
        return lead().scan().fieldsPerFrame();
    }

    /** Absent where the raster reaches the display as it is. */
    @Nullable
    Processing processing() {
        String id = setting.settings().processingId();
        return id == null || chain.leg() == null
                ? null
                : chain.leg().converter().processing().stream()
                        .filter(each -> each.id().equals(id))
                        .findFirst()
                        .orElseThrow();
    }

    OfferedTiming offered(Processing.RasterScale scale) {
        return scale.timings().stream()
                .filter(timing -> timing.label().equals(setting.settings().outputTiming()))
                .findFirst()
                .orElseThrow();
    }

    /** Whether the lines are captured and drawn anew; otherwise they pass as they come. */
    boolean isDrawn() {
        return setting.settings().pictureWidth() != null;
    }

    /**
     * Whether the display gets an analog picture of a broadcast family, in which nobody can count columns: it shows the
     * 4:3 picture of that family, with the console's in its middle.
     */
    boolean isBroadcastPicture() {
        return !isDrawn() && !chain.endsDigital() && lead().lineStandard() != LineStandard.OTHER;
    }

    /** Where along the line the first active dot of any mode begins, as a share of the line. */
    BigFraction left() {
        return modes.stream()
                .map(mode -> BigFraction.of(mode.active().firstDot()).divide(fraction(mode.dotsPerLine())))
                .min(BigFraction::compareTo)
                .orElseThrow();
    }

    BigFraction right() {
        return modes.stream()
                .map(mode -> BigFraction.of(
                                mode.active().firstDot() + mode.active().dots())
                        .divide(fraction(mode.dotsPerLine())))
                .max(BigFraction::compareTo)
                .orElseThrow();
    }

    int firstLine() {
        return modes.stream().mapToInt(mode -> mode.active().firstLine()).min().orElseThrow();
    }

    int lines() {
        return modes.stream()
                        .mapToInt(mode ->
                                mode.active().firstLine() + mode.active().lines())
                        .max()
                        .orElseThrow()
                - firstLine();
    }

    /** Frame lines of the family's picture: 480 or 576, half of them in rasters of half height; never fewer than active. */
    int broadcastLines() {
        int frame = lead().lineStandard() == LineStandard.L525_60 ? 480 : 576;
        return Math.max(lines() * fields(), lead().isHalfHeightProgressive() ? frame / 2 : frame);
    }

    /** Width of the family's picture as a share of the line: 4:3 of its height. */
    BigFraction broadcastWidth() {
        return FOUR_TO_THREE
                .multiply(broadcastLines())
                .divide(DotShape.onTube(lead(), PixelAspectConvention.BROADCAST))
                .divide(fraction(lead().dotsPerLine()));
    }

    /** The picture aspect of which the display is told; absent where it is told none. */
    @Nullable
    Rational signalledAspect() {
        if (isBroadcastPicture()) {
            return Rational.of(4, 3);
        }
        if (processing() instanceof Processing.RasterScale scale) {
            return chain.converterSignalsAspect() ? offered(scale).pictureAspect() : null;
        }
        return !isDrawn() || chain.converterSignalsAspect() ? listedAspect() : null;
    }

    /** The aspect of the listed raster for which the display takes the output. */
    private @Nullable Rational listedAspect() {
        String label = setting.measures().acceptance().listedAs();
        SinkLimits sink = chain.displayInput().sink();
        return label == null || sink == null
                ? null
                : sink.listed().stream()
                        .filter(listed -> listed.label().equals(label))
                        .findFirst()
                        .orElseThrow()
                        .pictureAspect();
    }
}
