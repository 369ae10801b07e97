package rasterfit.remedy;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.quantity.Rational;

/** The value of a setup on which a limit would have to be put for the setup to keep it. */
final class WorstValue {
    private WorstValue() {}

    /** Over all modes the greatest for an upper limit, the least for a lower one; empty where none binds. */
    static Optional<Rational> of(Limit limit, RankedSetup setup) {
        Stream<Rational> values = limit.measure() == LimitedMeasure.PRICE
                ? Stream.ofNullable(setup.price().greatest()).map(Rational::of)
                : measures(setup).stream()
                        .map(measures -> value(limit, measures))
                        .filter(Objects::nonNull);
        return limit.bound() == Limit.Bound.AT_MOST ? values.reduce(Rational::max) : values.reduce(Rational::min);
    }

    private static List<Measures> measures(RankedSetup setup) {
        List<Measures> all = new ArrayList<>();
        for (ModeSetting setting : setup.modeSettings()) {
            Collection<Measures> byMode = setting.measuresByMode().values();
            all.addAll(byMode.isEmpty() ? List.of(setting.measures()) : byMode);
        }
        return all;
    }

    private static @Nullable Rational value(Limit limit, Measures measures) {
        Measures.Shape shape = measures.shape();
        return switch (limit.measure()) {
            case ADDED_LATENCY_MS -> measures.addedLatencyMs().figure(Objects.requireNonNull(limit.figure()));
            case DISPLAY_LAG_MS -> measures.displayLagMs().figure(Objects.requireNonNull(limit.figure()));
            case TOTAL_LATENCY_MS -> measures.totalLatencyMs().figure(Objects.requireNonNull(limit.figure()));
            case ADDED_LATENCY_FIELDS -> measures.addedLatencyFields();
            case BUFFERED_LINES -> measures.bufferedLines() == null ? null : Rational.of(measures.bufferedLines());
            case ASPECT_ERROR_PERCENT -> shape.aspectErrorPercent().abs();
            case COVERAGE_PERCENT -> shape.coveragePercent();
            case COVERAGE_HEIGHT_PERCENT -> shape.coverageHeightPercent();
            case CROPPED_LINES -> shape.croppedLines();
            case CROPPED_DOTS -> shape.croppedDots();
            case CROPPED_USED_LINES -> shape.croppedUsedLines();
            case CROPPED_USED_DOTS -> shape.croppedUsedDots();
            case CROPPED_USED_LINES_PERCENT -> shape.croppedUsedLinesPercent();
            case DOT_WIDTH_RATIO -> shape.dotWidthRatio();
            case LINE_HEIGHT_RATIO -> shape.lineHeightRatio();
            case VERTICAL_SCALE -> shape.verticalScale();
            case HORIZONTAL_SCALE -> shape.horizontalScale();
            case SAMPLES_PER_DOT ->
                measures.sampling() == null ? null : measures.sampling().samplesPerDot();
            case DROP_OR_REPEAT_EVERY_SECONDS -> measures.dropOrRepeatEverySeconds();
            case ACCEPTANCE -> measures.acceptance().grade().rankFromWorst();
            case PRICE -> null;
        };
    }
}
