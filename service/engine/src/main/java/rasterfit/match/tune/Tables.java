package rasterfit.match.tune;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.SinkLimits;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Latency;
import rasterfit.match.LimitCheck;
import rasterfit.match.LimitedMeasure;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.LinkClockRules;
import rasterfit.rule.OwnerRules;
import rasterfit.rule.Refusal;
import rasterfit.timing.Raster;

/**
 * The measures of a layout, each computed once for every combination of the few axes on which it depends, with its
 * refusal and its utility as a primitive.
 */
final class Tables {
    final Layout layout;
    final List<Mode> modes;
    final int[] samples;
    final int placements;
    final int locks;
    final int deinterlacers;
    final int controls;
    private final LimitCheck limits;
    private final SampleCell[] sampleCells;
    private final OutputCell[] outputCells;
    private final AxisCell[][] columnCells;
    private final AxisCell[][] rowCells;
    private final DelayCell[][] delayCells;
    private final int[] verticalOf;
    private final Known known;

    /**
     * Cells of one direction of the geometry that have been worked out in this match. They depend on nothing but their
     * map (and the limits of the request), and routes that differ in a cable or a menu state have many in common.
     */
    static final class Known {
        private final Map<AxisMap, AxisCell> columns = new HashMap<>();
        private final Map<AxisMap, AxisCell> rows = new HashMap<>();
    }

    Tables(Layout layout, LimitCheck limits, Known known) {
        this.layout = layout;
        this.limits = limits;
        this.known = known;
        this.modes = layout.captured.modes();
        this.samples = layout.samples();
        this.placements = layout.placements().size();
        this.locks = layout.locks();
        this.deinterlacers = layout.deinterlacers();
        this.controls = layout.controls.size();
        this.verticalOf =
                layout.placements().stream().mapToInt(Placement::vertical).toArray();
        this.sampleCells = new SampleCell[samples.length];
        this.outputCells = new OutputCell[layout.outputFollowsSamples() ? samples.length * placements * locks : locks];
        this.columnCells = new AxisCell[modes.size()][samples.length * placements * controls];
        this.rowCells = new AxisCell[modes.size()][samples.length * placements * controls];
        int verticals = verticalOf[verticalOf.length - 1] + 1;
        this.delayCells = new DelayCell[modes.size()][verticals * locks * deinterlacers];
        fill();
    }

    static final class SampleCell extends Cell {
        SampleCell(@Nullable Refusal refusal) {
            super(refusal);
        }
    }

    /** What leaves for the display, how surely it is taken, and the display's own delay with it. */
    static final class OutputCell extends Cell {
        final Layout.Output output;
        final Acceptor.Verdict verdict;
        final AcceptanceGrade grade;
        /** The owner's own test that decided; absent if there is none. */
        final @Nullable DisplayTest tested;
        /** Under which the raster is offered or listed; may be empty. */
        final String label;

        final Latency lag;
        final double lagUtility;
        final String rasterKey;

        OutputCell(
                Layout.Output output,
                Acceptor.Verdict verdict,
                AcceptanceGrade grade,
                @Nullable DisplayTest tested,
                String label,
                Latency lag,
                @Nullable Refusal refusal) {
            super(refusal);
            this.output = output;
            this.verdict = verdict;
            this.grade = grade;
            this.tested = tested;
            this.label = label;
            this.lag = lag;
            this.lagUtility = Curves.latency(lag.typical().toDouble());
            this.rasterKey = Combiner.rasterKey(output.raster());
        }
    }

    /** One direction of the geometry. */
    static final class AxisCell extends Cell {
        final AxisMap.Shape shape;
        final double scale;
        final double drawn;
        final double evenness;
        /** Share of what is really drawn that stays visible. */
        final double kept;

        AxisCell(AxisMap.Shape shape, int used, @Nullable Refusal refusal) {
            super(refusal);
            this.shape = shape;
            this.scale = shape.scale().toDouble();
            this.drawn = shape.drawn().toDouble();
            this.kept = 1 - shape.croppedUsed().toDouble() / used;
            Rational ratio = ratio(shape);
            this.evenness = ratio == null ? 1 : Curves.evenness(ratio.toDouble());
        }
    }

    /** Delay of the converter chain and what becomes of motion. */
    static final class DelayCell extends Cell {
        final Layout.Added added;
        final RateBeat beat;
        final double utility;
        final double motion;

        DelayCell(Layout.Added added, RateBeat beat, @Nullable Refusal refusal) {
            super(refusal);
            this.added = added;
            this.beat = beat;
            this.utility = Curves.latency(added.ms().typical().toDouble());
            this.motion = Curves.motion(beat.beatHz().toDouble(), beat.wholeFrame(), beat.tears());
        }
    }

    SampleCell sample(int n) {
        return sampleCells[n];
    }

    OutputCell output(int n, int p, int l) {
        return outputCells[layout.outputFollowsSamples() ? (n * placements + p) * locks + l : l];
    }

    AxisCell columns(int mode, int n, int p, int c) {
        return columnCells[mode][(n * placements + p) * controls + c];
    }

    AxisCell rows(int mode, int n, int p, int c) {
        return rowCells[mode][(n * placements + p) * controls + c];
    }

    DelayCell delay(int mode, int p, int l, int d) {
        return delayCells[mode][(verticalOf[p] * locks + l) * deinterlacers + d];
    }

    private void fill() {
        for (int n = 0; n < samples.length; n++) {
            sampleCells[n] = new SampleCell(sampleRefusal(n));
        }
        SinkLimits sink = layout.route.displayInput().sink();
        Acceptor acceptor = sink == null ? null : new Acceptor(sink);
        boolean perSample = layout.outputFollowsSamples();
        for (int n = 0; n < (perSample ? samples.length : 1); n++) {
            for (int p = 0; p < (perSample ? placements : 1); p++) {
                for (int l = 0; l < locks; l++) {
                    int at = perSample ? (n * placements + p) * locks + l : l;
                    outputCells[at] = outputCell(acceptor, layout, limits, n, p, l, Steps.SILENT);
                }
            }
        }
        for (int m = 0; m < modes.size(); m++) {
            fillGeometry(m);
            fillDelays(m);
        }
    }

    private @Nullable Refusal sampleRefusal(int n) {
        Refusal refusal = layout.sampleRefusal(n);
        if (samples[n] > 0) {
            for (Mode mode : modes) {
                refusal = LimitCheck.first(
                        refusal,
                        limits.check(LimitedMeasure.SAMPLES_PER_DOT, Sampling.samplesPerDot(mode, samples[n])));
            }
        }
        return refusal;
    }

    /** Also asked for what is returned, with steps that tell. */
    static OutputCell outputCell(
            @Nullable Acceptor acceptor, Layout layout, LimitCheck limits, int n, int p, int l, Steps steps) {
        Layout.Output output = layout.output(n, p, l, steps);
        Raster raster = output.raster();
        Acceptor.Verdict verdict = acceptor == null
                ? new Acceptor.Verdict(Acceptor.gradeWithoutSink(layout.route.displayInput()), null, null, null)
                : acceptor.grade(raster, output.label(), output.pictureAspect(), steps);
        DisplayInput input = layout.route.displayInput();
        DisplayTest tested = OwnTests.deciding(input, raster, layout.route.endsDigital());
        AcceptanceGrade listed = output.lineAlternates() ? verdict.grade().lowered() : verdict.grade();
        AcceptanceGrade grade = OwnTests.grade(tested, listed);
        if (tested != null) {
            tellTest(tested, listed, grade, steps);
        }
        String label = output.label().isEmpty() && verdict.listedAs() != null ? verdict.listedAs() : output.label();
        Latency lag = DisplayLag.of(layout.route.display(), input, raster, label, steps);
        Refusal refusal = LimitCheck.first(output.refusal(), displayRefusal(layout, raster, tested));
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.DISPLAY_LAG_MS, lag));
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.ACCEPTANCE, grade.rankFromWorst()));
        return new OutputCell(output, verdict, grade, tested, label, lag, refusal);
    }

    private static void tellTest(DisplayTest tested, AcceptanceGrade listed, AcceptanceGrade grade, Steps steps) {
        steps.tell(
                "ownTest",
                step -> step.in("outcome", tested.outcome().name())
                        .in("on", tested.on().toString())
                        .in("without it", listed.name())
                        .by(
                                "an own test of this raster on this input decides: same counts, rate within ±0.5 %, the nearest"
                                        + " and then the newest of several",
                                "the owner's own test; assumption")
                        .gives(grade.name()));
    }

    /**
     * What the display says of the raster, unless its owner saw otherwise. A tube keeps its scan range all the same: outside
     * of it, it may show a picture and be harmed.
     */
    private static @Nullable Refusal displayRefusal(Layout layout, Raster raster, @Nullable DisplayTest tested) {
        DisplayInput input = layout.route.displayInput();
        if (tested != null && tested.outcome() == DisplayTest.Outcome.BLANK) {
            return LimitCheck.first(OwnerRules.blank(tested, input.path()), displayClockRefusal(layout, raster));
        }
        if (tested == null) {
            return displayClockRefusal(layout, raster);
        }
        return layout.route.display().panel() instanceof Panel.Tube ? DisplayRange.rateRefusal(input, raster) : null;
    }

    private static @Nullable Refusal displayClockRefusal(Layout layout, Raster raster) {
        DisplayInput input = layout.route.displayInput();
        if (!layout.route.endsDigital()) {
            return DisplayRange.refusal(input, raster, layout.captured);
        }
        Frequency greatest = input.sink() == null ? null : input.sink().maxTmdsClock();
        return LinkClockRules.display(
                        raster.pixelClock(), greatest == null ? LinkClockRules.UNDECLARED_MAXIMUM : greatest)
                .orElse(null);
    }

    private void fillGeometry(int m) {
        Mode mode = modes.get(m);
        for (int n = 0; n < samples.length; n++) {
            for (int p = 0; p < placements; p++) {
                Refusal placing = layout.placementRefusal(n, p);
                Rational aspect = layout.signalledAspect(output(n, p, 0).verdict.pictureAspect());
                for (int c = 0; c < controls; c++) {
                    PanelFit fit = layout.fit(aspect, n, p, c);
                    int at = (n * placements + p) * controls + c;
                    AxisCell columns = known.columns.computeIfAbsent(
                            layout.columns(mode, n, p, fit.horizontal()),
                            map -> columnCell(map.measure(), map.usedCount()));
                    columnCells[m][at] = placing == null
                            ? columns
                            : new AxisCell(
                                    columns.shape, mode.used().dots(), LimitCheck.first(placing, columns.refusal));
                    rowCells[m][at] = known.rows.computeIfAbsent(
                            layout.rows(mode, p, fit.vertical()), map -> rowCell(map.measure(), map.usedCount()));
                }
            }
        }
    }

    private AxisCell columnCell(AxisMap.Shape shape, int used) {
        boolean grid = layout.route.display().panel() instanceof Panel.Grid;
        Refusal refusal = limits.check(LimitedMeasure.CROPPED_DOTS, shape.cropped());
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.CROPPED_USED_DOTS, shape.croppedUsed()));
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.DOT_WIDTH_RATIO, ratio(shape)));
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.HORIZONTAL_SCALE, grid ? shape.scale() : null));
        return new AxisCell(shape, used, refusal);
    }

    private AxisCell rowCell(AxisMap.Shape shape, int used) {
        boolean grid = layout.route.display().panel() instanceof Panel.Grid;
        Refusal refusal = limits.check(LimitedMeasure.CROPPED_LINES, shape.cropped());
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.CROPPED_USED_LINES, shape.croppedUsed()));
        refusal = LimitCheck.first(
                refusal,
                limits.check(
                        LimitedMeasure.CROPPED_USED_LINES_PERCENT,
                        shape.croppedUsed().times(100).dividedBy(used)));
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.LINE_HEIGHT_RATIO, ratio(shape)));
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.VERTICAL_SCALE, grid ? shape.scale() : null));
        return new AxisCell(shape, used, refusal);
    }

    private static @Nullable Rational ratio(AxisMap.Shape shape) {
        Integer least = shape.least();
        Integer greatest = shape.greatest();
        if (least == null || greatest == null) {
            return null;
        }
        return greatest == 0 ? Rational.ZERO : Rational.of(least, greatest);
    }

    private void fillDelays(int m) {
        Mode mode = modes.get(m);
        for (int p = 0; p < placements; p++) {
            for (int l = 0; l < locks; l++) {
                for (int d = 0; d < deinterlacers; d++) {
                    int at = (verticalOf[p] * locks + l) * deinterlacers + d;
                    if (delayCells[m][at] == null) {
                        delayCells[m][at] = delayCell(mode, p, l, d);
                    }
                }
            }
        }
    }

    private DelayCell delayCell(Mode mode, int p, int l, int d) {
        Layout.Added added = layout.delay(mode, 0, p, l, d, Steps.SILENT);
        RateBeat beat = layout.beat(mode, 0, p, l, d, Steps.SILENT);
        Refusal refusal = LimitCheck.first(added.refusal(), limits.check(LimitedMeasure.ADDED_LATENCY_MS, added.ms()));
        Rational fields =
                added.ms().greatest().dividedBy(mode.fieldRate().period().millis());
        refusal = LimitCheck.first(refusal, limits.check(LimitedMeasure.ADDED_LATENCY_FIELDS, fields));
        Integer held = added.bufferedLines();
        refusal = LimitCheck.first(
                refusal, limits.check(LimitedMeasure.BUFFERED_LINES, held == null ? null : Rational.of(held)));
        refusal = LimitCheck.first(
                refusal, limits.check(LimitedMeasure.DROP_OR_REPEAT_EVERY_SECONDS, beat.everySeconds()));
        return new DelayCell(added, beat, refusal);
    }
}
