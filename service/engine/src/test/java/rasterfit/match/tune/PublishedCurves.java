package rasterfit.match.tune;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.PriceRange;
import rasterfit.match.Criterion;
import rasterfit.match.Measures;
import rasterfit.match.route.Route;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;

/** The curves of DOMAIN.md §11 written out once more, from the measures of an answer to utilities. */
final class PublishedCurves {
    private PublishedCurves() {}

    /** Uniformity, aspect, coverage, motion, latency and detail of one mode; without uniformity on a tube. */
    static Map<Criterion, Double> of(Route route, Mode mode, Measures measures, boolean wholeFrames) {
        Measures.Shape shape = measures.shape();
        Map<Criterion, Double> utilities = new EnumMap<>(Criterion.class);
        Panel panel = route.display().panel();
        if (panel instanceof Panel.Grid) {
            utilities.put(Criterion.DOT_UNIFORMITY, uniformity(measures));
        }
        double error = Math.abs(shape.aspectErrorPercent().toDouble());
        utilities.put(Criterion.ASPECT, error <= 1 ? 1 : error >= 15 ? 0 : (15 - error) / 14);
        // Both as shares of the panel: the greatest picture of its aspect touches two edges.
        double aspect = mode.active().dots() * measures.pixelAspectRatio().toDouble() / mode.frameLines();
        double wide = panel.aspect().toDouble();
        double drawn = shape.coveragePercent().toDouble() / 100;
        double keptLines = 1
                - shape.croppedUsedLines().toDouble()
                        / (mode.used().lines() * mode.scan().fieldsPerFrame());
        double keptDots = 1 - shape.croppedUsedDots().toDouble() / mode.used().dots();
        utilities.put(
                Criterion.COVERAGE, Math.min(1, drawn / Math.min(aspect / wide, wide / aspect)) * keptLines * keptDots);
        double beat = measures.dropOrRepeatEverySeconds() == null
                ? 0
                : 1 / measures.dropOrRepeatEverySeconds().toDouble();
        double tear = measures.tearDriftPicturesPerSecond() == null ? 1 : 0.7;
        utilities.put(Criterion.MOTION, 1 / (1 + 4 * beat) * tear * (wholeFrames ? 0.5 : 1));
        utilities.put(
                Criterion.LATENCY,
                Math.pow(2, -measures.totalLatencyMs().typical().toDouble() / 16.7));
        utilities.put(
                Criterion.LINK_DETAIL,
                Objects.requireNonNull(measures.linkDetail()).combined().toDouble());
        return utilities;
    }

    private static double uniformity(Measures measures) {
        Measures.Sampling sampling = measures.sampling();
        if (sampling != null && sampling.samplesPerDot().isLessThan(Rational.ONE)) {
            return 0;
        }
        double softness = sampling == null ? 0 : sampling.edgeSoftness();
        double dots = evenness(measures.shape().dotWidthRatio()) * (1 - softness);
        return Math.min(dots, evenness(measures.shape().lineHeightRatio()));
    }

    /** What cannot be counted does not speak against a picture. */
    private static double evenness(@Nullable Rational ratio) {
        return ratio == null ? 1 : Math.max(0, 2 * ratio.toDouble() - 1);
    }

    /** Converter and, unless all its rasters are the same, display have to follow anew. */
    static double gap(Route route, boolean sameRaster) {
        double ms = 0;
        if (route.leg() != null) {
            ms += route.leg()
                    .converter()
                    .resyncMs()
                    .orAssume(Assumptions.CONVERTER_RESYNC_MS)
                    .typical()
                    .toDouble();
        }
        if (!sameRaster) {
            ms += route.displayInput()
                    .resyncMs()
                    .orAssume(Assumptions.DIGITAL_DISPLAY_RESYNC_MS)
                    .typical()
                    .toDouble();
        }
        return Math.pow(2, -ms / 1000 / 2);
    }

    /** Equal totals and active counts, and a clock that moves by no more than 0.5 %. */
    static boolean isSameRaster(Raster one, Raster other) {
        return one.horizontalActive() == other.horizontalActive()
                && one.horizontalTotal().equals(other.horizontalTotal())
                && one.verticalActive() == other.verticalActive()
                && one.verticalTotal().equals(other.verticalTotal())
                && one.scan() == other.scan()
                && Math.abs(one.pixelClock().ratioTo(other.pixelClock()).toDouble() - 1) <= 0.005;
    }

    static double effort(Route route) {
        double changes = route.leg() == null
                ? 0
                : route.leg()
                        .converter()
                        .settingsToTune()
                        .orAssume(Assumptions.SETTINGS_TO_TUNE)
                        .typical()
                        .toDouble();
        return 1 / (1 + changes / 4);
    }

    /** Of the middle price; absent where there is something to buy and nothing of it is priced. */
    static @Nullable Double cost(Route route) {
        List<@Nullable PriceRange> prices = new ArrayList<>();
        route.links().forEach(link -> prices.add(link.price()));
        if (route.leg() != null) {
            prices.add(route.leg().converter().price());
        }
        if (!prices.isEmpty() && prices.stream().allMatch(Objects::isNull)) {
            return null;
        }
        BigDecimal twice = BigDecimal.ZERO;
        for (PriceRange price : prices) {
            if (price != null) {
                twice = twice.add(price.least().amount()).add(price.greatest().amount());
            }
        }
        return Math.pow(2, -twice.doubleValue() / 2 / 150);
    }
}
