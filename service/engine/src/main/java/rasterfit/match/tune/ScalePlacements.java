package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.ScaleAxis;
import rasterfit.quantity.Rational;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;

/**
 * Where a scaler can draw a captured picture in one output timing: whole factors up to fit, the first two past it with
 * crop, and the non-whole fits of all lines and of the drawn ones; across, the exact aspect and the whole factors next to
 * it.
 */
final class ScalePlacements {
    private static final int FACTORS_PAST_FIT = 2;
    /** Nothing wider than this many rasters is tried: no crop reaches so far. */
    private static final int WIDEST_IN_RASTERS = 4;

    private final Captured captured;
    private final Processing.RasterScale scale;
    private final int activeRows;
    private final int activeColumns;
    private final List<Rational> sampleAspects;

    /**
     * Looks at one output timing.
     *
     * @param sampleAspects the shapes that a sample of the raster can come to have on the display, each once
     */
    ScalePlacements(
            Captured captured, Processing.RasterScale scale, OfferedTiming offered, List<Rational> sampleAspects) {
        this.captured = captured;
        this.scale = scale;
        this.activeRows = offered.timing().verticalActive();
        this.activeColumns = offered.timing().horizontalActive();
        this.sampleAspects = List.copyOf(sampleAspects);
    }

    /** Lines kept of the field and rows on which they are drawn. */
    private record Vertical(int lines, int rows) {}

    List<Placement> all() {
        List<Placement> placements = new ArrayList<>();
        int number = 0;
        for (Vertical vertical : verticals()) {
            int cropped = captured.lines() - vertical.lines();
            Refusal refusal = ProcessingRules.croppedLines(
                            cropped * captured.fieldsPerFrame(),
                            scale.vertical().maxCrop())
                    .orElse(null);
            int first = CropWindow.first(
                    captured.lines(),
                    vertical.lines(),
                    captured.usedFirstLine() - captured.firstLine(),
                    captured.usedLines());
            int top = Math.floorDiv(activeRows - vertical.rows(), 2);
            for (Placement.Across across : across(vertical)) {
                placements.add(new Placement(
                        first,
                        vertical.lines(),
                        vertical.rows(),
                        top,
                        number,
                        across,
                        Rules.first(refusal, croppedDots(across))));
            }
            number++;
        }
        return placements;
    }

    private Set<Vertical> verticals() {
        int fields = captured.fieldsPerFrame();
        int frameLines = captured.lines() * fields;
        Set<Vertical> verticals = new LinkedHashSet<>();
        int fit = activeRows / frameLines;
        for (int factor = 1; factor <= fit; factor++) {
            verticals.add(new Vertical(captured.lines(), factor * frameLines));
        }
        for (int factor = fit + 1; factor <= fit + FACTORS_PAST_FIT; factor++) {
            int kept = activeRows / (factor * fields);
            if (kept > 0) {
                verticals.add(new Vertical(kept, kept * factor * fields));
            }
        }
        if (scale.vertical().factors() == ScaleAxis.Factors.ANY) {
            verticals.add(new Vertical(captured.lines(), activeRows));
            if (captured.usedLines() < captured.lines()) {
                verticals.add(new Vertical(captured.usedLines(), activeRows));
            }
        }
        return verticals;
    }

    /** Columns for the captured stretch at the intended aspect; usually not whole. */
    private Rational exactColumns(Vertical vertical, Rational sampleAspect) {
        Rational rowsPerFrameLine = Rational.of(vertical.rows(), (long) vertical.lines() * captured.fieldsPerFrame());
        return rowsPerFrameLine
                .times(captured.leadDots())
                .times(captured.leadAspect())
                .dividedBy(sampleAspect);
    }

    private Set<Placement.Across> across(Vertical vertical) {
        Set<Placement.Across> across = new LinkedHashSet<>();
        for (Rational sampleAspect : sampleAspects) {
            Rational widest = Rational.of((long) WIDEST_IN_RASTERS * activeColumns);
            addAcross(across, exactColumns(vertical, sampleAspect).min(widest));
        }
        return across;
    }

    private void addAcross(Set<Placement.Across> across, Rational exact) {
        if (scale.horizontal().factors() == ScaleAxis.Factors.WHOLE) {
            // Which whole number comes nearest depends on the samples; all that can fit are tried.
            long most = Math.max(1, exact.dividedBy(captured.leadDots()).ceil());
            for (int columns = 1; columns <= most; columns++) {
                across.add(new Placement.Across.WholeSamples(columns));
            }
            return;
        }
        across.add(new Placement.Across.Columns((int) Math.max(1, exact.round())));
        Rational perDot = exact.dividedBy(captured.leadDots());
        for (long whole : new long[] {perDot.floor(), perDot.ceil()}) {
            if (whole >= 1) {
                across.add(new Placement.Across.Columns(
                        (int) captured.leadDots().times(whole).round()));
            }
        }
    }

    private @Nullable Refusal croppedDots(Placement.Across across) {
        return across instanceof Placement.Across.Columns fixed ? croppedDots(fixed.columns()) : null;
    }

    /** @param columns on which the whole stretch would be drawn */
    @Nullable
    Refusal croppedDots(int columns) {
        if (columns <= activeColumns) {
            return null;
        }
        Rational cropped =
                captured.leadDots().times((long) columns - activeColumns).dividedBy(columns);
        return ProcessingRules.croppedDots(cropped, scale.horizontal().maxCrop())
                .orElse(null);
    }
}
