package rasterfit.match.property;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.match.LatencyFigure;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.Measures;
import rasterfit.quantity.Rational;

/** What a limit has to be compared with, read from the measures of an answer; prices belong to the whole setup. */
public final class LimitedValues {
    private LimitedValues() {}

    /** Absent where the measure does not apply. */
    public static @Nullable Rational of(Measures measures, Limit limit) {
        Map<LimitedMeasure, Rational> values = new EnumMap<>(LimitedMeasure.class);
        Measures.Shape shape = measures.shape();
        LatencyFigure figure = limit.figure();
        if (figure != null) {
            values.put(
                    LimitedMeasure.ADDED_LATENCY_MS, measures.addedLatencyMs().figure(figure));
            values.put(LimitedMeasure.DISPLAY_LAG_MS, measures.displayLagMs().figure(figure));
            values.put(
                    LimitedMeasure.TOTAL_LATENCY_MS, measures.totalLatencyMs().figure(figure));
        }
        values.put(LimitedMeasure.ADDED_LATENCY_FIELDS, measures.addedLatencyFields());
        values.put(
                LimitedMeasure.BUFFERED_LINES,
                measures.bufferedLines() == null ? null : Rational.of(measures.bufferedLines()));
        values.put(
                LimitedMeasure.ASPECT_ERROR_PERCENT, shape.aspectErrorPercent().abs());
        values.put(LimitedMeasure.COVERAGE_PERCENT, shape.coveragePercent());
        values.put(LimitedMeasure.COVERAGE_HEIGHT_PERCENT, shape.coverageHeightPercent());
        values.put(LimitedMeasure.CROPPED_LINES, shape.croppedLines());
        values.put(LimitedMeasure.CROPPED_DOTS, shape.croppedDots());
        values.put(LimitedMeasure.CROPPED_USED_LINES, shape.croppedUsedLines());
        values.put(LimitedMeasure.CROPPED_USED_DOTS, shape.croppedUsedDots());
        values.put(LimitedMeasure.CROPPED_USED_LINES_PERCENT, shape.croppedUsedLinesPercent());
        values.put(LimitedMeasure.DOT_WIDTH_RATIO, shape.dotWidthRatio());
        values.put(LimitedMeasure.LINE_HEIGHT_RATIO, shape.lineHeightRatio());
        values.put(LimitedMeasure.VERTICAL_SCALE, shape.verticalScale());
        values.put(LimitedMeasure.HORIZONTAL_SCALE, shape.horizontalScale());
        values.put(
                LimitedMeasure.SAMPLES_PER_DOT,
                measures.sampling() == null ? null : measures.sampling().samplesPerDot());
        values.put(LimitedMeasure.DROP_OR_REPEAT_EVERY_SECONDS, measures.dropOrRepeatEverySeconds());
        values.put(LimitedMeasure.ACCEPTANCE, measures.acceptance().grade().rankFromWorst());
        return values.get(limit.measure());
    }
}
