package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Estimate;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.LatencyFigure;

/**
 * What the simulations measured of the way through the converter.
 *
 * @param ms every figure of the latency
 * @param heldLines lines of memory; absent where none are counted
 * @param heldAtOnce most lines that were held at one moment; never more than the memory
 * @param fieldStores absent where no whole fields are kept
 */
record Delay(
        Map<LatencyFigure, BigFraction> ms,
        @Nullable Integer heldLines,
        int heldAtOnce,
        @Nullable Integer fieldStores) {

    /** Plays a mode through the processing of its setting. */
    static Delay of(Group group, Mode mode, Simulated simulated) {
        Processing processing = group.processing();
        if (processing instanceof Processing.RasterScale scale) {
            return "FREE_RUNNING".equals(group.setting().settings().rateLock())
                    ? new FreeDelay(group, mode, scale, simulated).measure()
                    : new LockedDelay(group, mode, scale, simulated).measure();
        }
        BigFraction electronics = processing == null ? BigFraction.ZERO : electronicsMs(processing);
        return group.isDrawn()
                ? RepeatDelay.measure(group, mode, Objects.requireNonNull(processing), electronics, simulated)
                // Nothing is kept: every line leaves as it comes.
                : new Delay(flat(electronics, electronics, electronics), null, 0, null);
    }

    static BigFraction electronicsMs(Processing processing) {
        return fraction(processing.pipelineUs()
                        .orAssume(Assumptions.PIPELINE_US)
                        .typical())
                .divide(1000);
    }

    static BigFraction fieldMs(Mode mode) {
        return BigFraction.of(1000).divide(fraction(mode.fieldRate().hz()));
    }

    /** The same at every line of the picture. */
    static Map<LatencyFigure, BigFraction> flat(BigFraction least, BigFraction typical, BigFraction greatest) {
        return figures(typical, typical, typical, least, greatest);
    }

    /** The middle line is the typical one. */
    static Map<LatencyFigure, BigFraction> figures(
            BigFraction top, BigFraction middle, BigFraction bottom, BigFraction least, BigFraction greatest) {
        Map<LatencyFigure, BigFraction> figures = new EnumMap<>(LatencyFigure.class);
        figures.put(LatencyFigure.TOP, top);
        figures.put(LatencyFigure.MIDDLE, middle);
        figures.put(LatencyFigure.BOTTOM, bottom);
        figures.put(LatencyFigure.LEAST, least);
        figures.put(LatencyFigure.TYPICAL, middle);
        figures.put(LatencyFigure.GREATEST, greatest);
        return figures;
    }

    /** The same with whole fields and microseconds that no simulation of lines can know: stated by the device, or assumed. */
    static Map<LatencyFigure, BigFraction> withStated(
            Map<LatencyFigure, BigFraction> lines, Group group, Mode mode, Processing processing) {
        Estimate fields = statedFields(group, mode);
        BigFraction electronics = electronicsMs(processing);
        Map<LatencyFigure, BigFraction> all = new EnumMap<>(LatencyFigure.class);
        lines.forEach((figure, ms) -> {
            BigFraction added = fraction(
                    switch (figure) {
                        case LEAST -> fields.least();
                        case GREATEST -> fields.greatest();
                        case TOP, MIDDLE, BOTTOM, TYPICAL -> fields.typical();
                    });
            all.put(figure, ms.add(added.multiply(fieldMs(mode))).add(electronics));
        });
        return all;
    }

    private static Estimate statedFields(Group group, Mode mode) {
        Estimate fields = Assumptions.NO_FIELDS;
        Deinterlacer deinterlacer = deinterlacer(group);
        if (deinterlacer != null) {
            boolean adapts = deinterlacer.kind() == Deinterlacer.Kind.MOTION_ADAPTIVE;
            fields = deinterlacer
                    .addedFields()
                    .orAssume(adapts ? Assumptions.MOTION_ADAPTIVE_FIELDS : Assumptions.NO_FIELDS);
        }
        ConverterInput input = Objects.requireNonNull(group.chain().leg()).input();
        return mode.isHalfHeightProgressive() && input.halfHeight() == HalfHeight.AS_INTERLACED
                ? fields.plus(input.halfHeightAddedFields().orAssume(Assumptions.HALF_HEIGHT_FIELDS))
                : fields;
    }

    /** Absent where nothing is deinterlaced. */
    static @Nullable Deinterlacer deinterlacer(Group group) {
        Deinterlacer.Kind kind = group.setting().settings().deinterlacer();
        return kind == null || !(group.processing() instanceof Processing.RasterScale scale)
                ? null
                : scale.deinterlacers().stream()
                        .filter(each -> each.kind() == kind)
                        .findFirst()
                        .orElseThrow();
    }
}
