package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.Mode;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.OwnEvidence.OwnReading;
import rasterfit.gear.Panel;
import rasterfit.gear.Processing;
import rasterfit.gear.SinkLimits;
import rasterfit.match.Latency;
import rasterfit.match.LimitCheck;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.Measures;
import rasterfit.match.Step;
import rasterfit.quantity.Rational;

/**
 * Works out one chosen setting in full: all measures of each of its modes and, if asked, the steps that led to them. It
 * calls the very functions that filled the tables.
 */
public final class Measurer {
    private final Candidate chosen;
    private final Layout layout;
    private final boolean tellSteps;

    public Measurer(Candidate chosen, boolean tellSteps) {
        this.chosen = chosen;
        this.layout = chosen.tables().layout;
        this.tellSteps = tellSteps;
    }

    /** @param fallback absent when not needed or when there is none */
    public ModeSetting measure(Measures.@Nullable Fallback fallback) {
        Map<String, Measures> byMode = new LinkedHashMap<>();
        List<String> names = new ArrayList<>();
        List<Step> steps = new ArrayList<>();
        for (Mode mode : layout.captured.modes()) {
            Steps log = tellSteps ? Steps.telling(mode.name()) : Steps.SILENT;
            names.add(mode.name());
            byMode.put(mode.name(), measures(mode, fallback, log));
            steps.addAll(log.told());
        }
        Measures lead = byMode.get(layout.captured.lead().name());
        if (lead == null) {
            throw new IllegalStateException("the lead mode is one of the group");
        }
        return new ModeSetting(
                names,
                layout.settings(chosen.n(), chosen.p(), chosen.l(), chosen.d(), chosen.c()),
                chosen.raster(),
                lead,
                byMode.size() > 1 ? byMode : Map.of(),
                steps);
    }

    private Measures measures(Mode mode, Measures.@Nullable Fallback fallback, Steps steps) {
        int n = chosen.n();
        int p = chosen.p();
        Rational pixelAspect = PixelAspect.intended(mode, layout.captured.convention(), steps);
        tellRates(mode, steps);
        int samples = layout.samples()[n];
        Measures.Sampling sampling = samples == 0
                ? null
                : Sampling.measure(mode, samples, layout.chain(), layout.consideredSamples(), steps);
        Tables.OutputCell output = output(steps);
        Measures.Shape shape = shape(mode, output, pixelAspect, steps);
        Layout.Added added = layout.delay(mode, n, p, chosen.l(), chosen.d(), steps);
        RateBeat beat = layout.beat(mode, n, p, chosen.l(), chosen.d(), steps);
        Latency total = added.ms().plus(output.lag);
        steps.tell(
                "totalLatencyMs",
                step -> step.in("added, typical", added.ms().typical(), "ms")
                        .in("display, typical", output.lag.typical(), "ms")
                        .in("added, greatest", added.ms().greatest(), "ms")
                        .in("display, greatest", output.lag.greatest(), "ms")
                        .by("added + display, figure by figure", "definition")
                        .gives(total.typical(), "ms typical"));
        Rational fieldMs = mode.fieldRate().period().millis();
        Rational addedFields = added.ms().greatest().dividedBy(fieldMs);
        steps.tell(
                "addedLatencyFields",
                step -> step.in("greatest", added.ms().greatest(), "ms")
                        .in("T", fieldMs, "ms")
                        .by("greatest / T", "definition")
                        .gives(addedFields, "fields"));
        boolean analog = !layout.route.output().format().isDigital();
        return new Measures(
                pixelAspect,
                layout.captured.convention(),
                sampling,
                shape,
                added.ms(),
                addedFields,
                output.lag,
                total,
                added.bufferedLines(),
                added.fieldStores(),
                beat.everySeconds(),
                beat.tears() ? beat.beatHz() : null,
                new Measures.Acceptance(
                        output.grade, output.verdict.listedAs(), output.verdict.deviations(), output.tested, fallback),
                analog ? layout.chain().detail(mode, steps) : null);
    }

    private Tables.OutputCell output(Steps steps) {
        SinkLimits sink = layout.route.displayInput().sink();
        Acceptor acceptor = sink == null ? null : new Acceptor(sink);
        return Tables.outputCell(
                acceptor, layout, new LimitCheck(List.of()), chosen.n(), chosen.p(), chosen.l(), steps);
    }

    private static void tellRates(Mode mode, Steps steps) {
        steps.tell(
                "lineRate",
                step -> step.in("dot clock", mode.dotClock().hz(), "Hz")
                        .in("dots per line", mode.dotsPerLine(), "")
                        .by("dot clock / dots per line", "definition")
                        .gives(mode.lineRate().hz(), "Hz"));
        steps.tell(
                "fieldRate",
                step -> step.in("line rate", mode.lineRate().hz(), "Hz")
                        .in("lines per field", mode.linesPerField(), "")
                        .by("line rate / lines per field", "definition")
                        .gives(mode.fieldRate().hz(), "Hz"));
    }

    private Measures.Shape shape(Mode mode, Tables.OutputCell output, Rational pixelAspect, Steps steps) {
        Rational signalled = layout.signalledAspect(output.verdict.pictureAspect());
        PanelFit fit = layout.fit(signalled, chosen.n(), chosen.p(), chosen.c());
        AxisMap columnMap = layout.columns(mode, chosen.n(), chosen.p(), fit.horizontal());
        AxisMap.Shape columns = columnMap.measure();
        AxisMap rowMap = layout.rows(mode, chosen.p(), fit.vertical());
        AxisMap.Shape rows = rowMap.measure();
        PictureArea area = PictureArea.of(layout.route.display().panel(), mode, pixelAspect);
        Rational error = columns.scale()
                .dividedBy(rows.scale())
                .dividedBy(pixelAspect)
                .minus(Rational.ONE)
                .times(100);
        Rational coverage = columns.drawn().times(rows.drawn()).times(100).dividedBy(area.panel());
        Rational height = rows.drawn().times(100).dividedBy(area.panelRows());
        tellAxis(Axis.VERTICAL, rowMap, rows, steps);
        tellAxis(Axis.HORIZONTAL, columnMap, columns, steps);
        steps.tell(
                "aspectErrorPercent",
                step -> step.in("horizontal scale", columns.scale(), "")
                        .in("vertical scale", rows.scale(), "")
                        .in("pixel aspect ratio", pixelAspect, "")
                        .by("100 · (horizontal scale / vertical scale / pixel aspect ratio − 1)", "definition")
                        .gives(error, "%"));
        steps.tell(
                "coveragePercent",
                step -> step.in("drawn columns", columns.drawn(), "")
                        .in("drawn rows", rows.drawn(), "")
                        .in("visible panel area", area.panel(), "")
                        .by("100 · drawn columns · drawn rows / visible panel area", "definition")
                        .gives(coverage, "%"));
        steps.tell(
                "greatestPictureArea",
                step -> step.in("active dots", mode.active().dots(), "")
                        .in("pixel aspect ratio", pixelAspect, "")
                        .in("frame lines", mode.frameLines(), "")
                        .in("panel rows", area.panelRows(), "")
                        .in("visible panel area", area.panel(), "")
                        .by(
                                "aspect = dots · pixel aspect ratio / lines; rows² · aspect where it is narrower than the panel,"
                                        + " else columns² / aspect: what the coverage criterion compares with",
                                "definition")
                        .gives(area.greatest(), ""));
        steps.tell(
                "coverageHeightPercent",
                step -> step.in("drawn rows", rows.drawn(), "")
                        .in("panel rows", area.panelRows(), "")
                        .by("100 · drawn rows / panel rows", "definition")
                        .gives(height, "%"));
        boolean grid = layout.route.display().panel() instanceof Panel.Grid;
        return new Measures.Shape(
                grid ? rows.scale() : null,
                grid ? columns.scale() : null,
                error,
                coverage,
                height,
                rows.cropped(),
                columns.cropped(),
                rows.croppedUsed(),
                columns.croppedUsed(),
                rows.croppedUsed().times(100).dividedBy(rowMap.usedCount()),
                columns.least(),
                columns.greatest(),
                rows.least(),
                rows.greatest(),
                columns.least() == null
                        ? null
                        : blended(layout.sampledColumns(mode, chosen.n(), chosen.p(), fit.horizontal()), steps));
    }

    /** Names and units of the steps of either direction. */
    private enum Axis {
        HORIZONTAL("horizontalScale", "columns per dot", "dotWidthRatio", "croppedDots", "dots"),
        VERTICAL("verticalScale", "rows per source line", "lineHeightRatio", "croppedLines", "lines");

        private final String scale;
        private final String unit;
        private final String ratio;
        private final String cropped;
        private final String element;

        Axis(String scale, String unit, String ratio, String cropped, String element) {
            this.scale = scale;
            this.unit = unit;
            this.ratio = ratio;
            this.cropped = cropped;
            this.element = element;
        }
    }

    /** Both stages: the converter's picture over its capture, and the panel over the raster. */
    private static void tellAxis(Axis axis, AxisMap map, AxisMap.Shape shape, Steps steps) {
        steps.tell(
                axis.scale,
                step -> step.in("picture in the raster", map.pictureWidth(), "")
                        .in("captured", map.captureLength(), map.samplesPerDot() == null ? axis.element : "samples")
                        .in("samples per dot", map.samplesPerDot() == null ? Rational.ONE : map.samplesPerDot(), "")
                        .in("raster shown", map.panel().length(), "")
                        .in("on the panel", map.panel().extent(), "")
                        .by(
                                "picture / captured · samples per dot · on the panel / raster shown (both stages)",
                                "definition; overscan hides a part of the raster at each edge")
                        .gives(shape.scale(), axis.unit));
        steps.tell(
                axis.cropped,
                step -> step.in("active", map.count(), axis.element)
                        .in("visible on the panel", shape.drawn(), "pixels")
                        .in(axis.scale, shape.scale(), axis.unit)
                        .by("active − visible on the panel / " + axis.scale, "definition")
                        .gives(shape.cropped(), axis.element));
        Integer least = shape.least();
        Integer greatest = shape.greatest();
        if (least != null && greatest != null) {
            steps.tell(
                    axis.ratio,
                    step -> step.in(axis.scale, shape.scale(), axis.unit)
                            .in("first one, from the window's edge", map.first(), axis.element)
                            .in("window starts at", map.captureStart(), "")
                            .in("picture starts at", map.pictureLeft(), "of the raster")
                            .in("panel shows from", map.panel().start(), "of the raster")
                            .in("least", least, "pixels")
                            .in("greatest", greatest, "pixels")
                            .by(
                                    "least / greatest number of pixels whose centre, traced back through every stage to the nearest"
                                            + " sample, lands on one; ⌊" + axis.scale + "⌋ and ⌈" + axis.scale
                                            + "⌉ where one stage decides",
                                    "definition")
                            .gives(greatest == 0 ? Rational.ZERO : Rational.of(least, greatest), ""));
        }
    }

    private Rational blended(AxisMap map, Steps steps) {
        Panel.Filter filter =
                layout.route.display().panel() instanceof Panel.Grid grid ? grid.filter() : Panel.Filter.NEAREST;
        return new Blend(map, layout.horizontalTaps(), filter).percent(steps);
    }

    /** What a utility of a mode is computed from, beside its measures. */
    public double greatestArea(Mode mode) {
        return PictureArea.of(layout.route.display().panel(), mode, layout.intendedAspect(mode))
                .greatest()
                .toDouble();
    }

    /** The whole visible face, in panel pixels. */
    public double panelArea(Mode mode) {
        return PictureArea.of(layout.route.display().panel(), mode, layout.intendedAspect(mode))
                .panel()
                .toDouble();
    }

    public boolean showsWholeFrames() {
        return layout.beat(layout.captured.lead(), chosen.n(), chosen.p(), chosen.l(), chosen.d(), Steps.SILENT)
                .wholeFrame();
    }

    /** Whether the display takes the raster for a field of an interlaced one. */
    public boolean displayTakesAsInterlaced() {
        return DisplayLag.takesAsInterlaced(layout.route.displayInput(), chosen.raster());
    }

    /** The owner's own test of this raster that was made with another firmware; absent if there is none. */
    public @Nullable DisplayTest outdatedTest() {
        return OwnTests.outdated(layout.route.displayInput(), chosen.raster(), layout.route.endsDigital());
    }

    /**
     * The owner's own reading that the display's delay rests on.
     *
     * @param without the delay that it would be taken to have without it
     */
    public record OwnLag(OwnReading own, Latency without) {}

    /** Absent if the owner read none that holds for this raster. */
    public @Nullable OwnLag ownLag() {
        DisplayInput input = layout.route.displayInput();
        String label = output(Steps.SILENT).label;
        return DisplayLag.own(input, label)
                .map(own -> new OwnLag(
                        own,
                        DisplayLag.of(
                                layout.route.display(),
                                input.with(OwnEvidence.NONE),
                                chosen.raster(),
                                label,
                                Steps.SILENT)))
                .orElse(null);
    }

    public boolean lineAlternates() {
        return layout.output(chosen.n(), chosen.p(), chosen.l(), Steps.SILENT).lineAlternates();
    }

    public boolean usesPipelineAssumption() {
        return layout.pipelineIsAssumed();
    }

    public boolean overscanIsAssumed() {
        return layout.overscan().assumed() && layout.overscan().typical().signum() != 0;
    }

    /** How the picture is processed; absent on a direct route. */
    public @Nullable Processing processing() {
        return layout.processing();
    }
}
