package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Estimate;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.SamplesPerLine;
import rasterfit.match.Latency;
import rasterfit.match.Settings;
import rasterfit.match.route.Route;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.LinkClockRules;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/**
 * Digitised lines sent m times each at m times the line rate; with m = 1 the raster only changes its link. The output
 * raster follows from the samples: clock = N·h·m·line rate, total = N·h, active = window·h, with h the repetition of
 * samples that a digital link needs to reach its least rate.
 */
final class RepeatLayout extends Layout {
    private static final int GREATEST_REPETITION = 10;

    private final Route.Leg leg;
    private final Digitiser digitiser;
    private final Processing processing;
    private final int copies;
    private final int from;
    private final int[] samples;
    private final int considered;
    private final List<Placement> placements;

    /** Sends {@code from} lines of every field, {@code copies} times each. */
    private RepeatLayout(
            Route route,
            Route.Leg leg,
            Digitiser digitiser,
            Captured captured,
            Processing processing,
            int copies,
            int from,
            int[] samples,
            int considered) {
        super(route, captured);
        this.leg = leg;
        this.digitiser = digitiser;
        this.processing = processing;
        this.copies = copies;
        this.from = from;
        this.samples = samples;
        this.considered = considered;
        this.placements = new ArrayList<>();
    }

    /**
     * One layout over all sample counts with the windows that suit any of them, and one for each count that shares its
     * total with a listed timing, with the active width of that timing.
     *
     * @param copies m
     * @param from lines per field of the input class, all of which are sent
     */
    static List<RepeatLayout> all(
            Route route,
            Route.Leg leg,
            Digitiser digitiser,
            Captured captured,
            Processing processing,
            int copies,
            int from) {
        Rational rowsPerFrameLine = Rational.of(copies, captured.fieldsPerFrame());
        int[] samples = SampleCounts.worthTrying(captured, digitiser.samplesPerLine(), List.of(rowsPerFrameLine));
        List<RepeatLayout> layouts = new ArrayList<>();
        RepeatLayout general =
                new RepeatLayout(route, leg, digitiser, captured, processing, copies, from, samples, samples.length);
        RepeatWindows windows = new RepeatWindows(captured, from, general.rowsSent());
        general.place(windows.suitingAny());
        layouts.add(general);
        for (int n = 0; n < samples.length; n++) {
            List<Placement.Across> widths = windows.listed(samples[n], general.repetition(n));
            if (!widths.isEmpty()) {
                int[] one = {samples[n]};
                RepeatLayout listed = new RepeatLayout(
                        route, leg, digitiser, captured, processing, copies, from, one, samples.length);
                listed.place(widths);
                layouts.add(listed);
            }
        }
        return layouts;
    }

    private void place(List<Placement.Across> choices) {
        int own = captured.lines();
        int first = own > from
                ? CropWindow.first(own, from, captured.usedFirstLine() - captured.firstLine(), captured.usedLines())
                : firstOfAll(own) - captured.firstLine();
        for (Placement.Across choice : choices) {
            placements.add(new Placement(first, from, rowsSent(), 0, 0, choice, null));
        }
    }

    /** The lines of the class lie around the picture, as far as the field has room above and below. */
    private int firstOfAll(int own) {
        int latest = (int) captured.lead().linesPerField().floor() - from;
        return Math.max(0, Math.min(captured.firstLine() - (from - own) / 2, latest));
    }

    private int rowsSent() {
        return from * (progressiveOut() ? copies : captured.fieldsPerFrame());
    }

    /** A change of format alone keeps interlaced fields; repetition makes a progressive frame of every field. */
    private boolean progressiveOut() {
        return copies > 1 || !captured.isInterlaced();
    }

    @Override
    int[] samples() {
        return samples;
    }

    @Override
    List<Placement> placements() {
        return placements;
    }

    @Override
    int consideredSamples() {
        return considered;
    }

    @Override
    boolean outputFollowsSamples() {
        return true;
    }

    @Override
    @Nullable
    Refusal sampleRefusal(int n) {
        Refusal refusal = sampleRateRefusal(digitiser, samples[n]);
        if (processing instanceof Processing.LineRepeat repeat) {
            SamplesPerLine.FreeRange range = repeat.samplesPerLine();
            if (range != null && !range.allows(samples[n])) {
                int nearest = samples[n] < range.min() ? range.min() : range.max();
                refusal = Rules.first(refusal, ProcessingRules.samplesPerLine(samples[n], nearest));
            }
        }
        return refusal;
    }

    private Placement.Across.Stretch stretch(int p) {
        return (Placement.Across.Stretch) placements.get(p).across();
    }

    private Rational perDot(int n) {
        return Sampling.samplesPerDot(captured.lead(), samples[n]);
    }

    /** Samples in the window: never fewer than its dots need, never more than the line has. */
    private int windowSamples(int n, int p) {
        Placement.Across.Stretch stretch = stretch(p);
        Integer fixed = stretch.samples();
        long wanted = fixed != null
                ? fixed
                : stretch.dots() == null ? 0 : stretch.dots().times(perDot(n)).ceil();
        return (int) Math.max(1, Math.min(samples[n] - 1L, wanted));
    }

    private long windowStart(int n, int p) {
        Rational start = stretch(p).start();
        if (start != null) {
            return start.times(perDot(n)).floor();
        }
        Rational spare =
                Rational.of(windowSamples(n, p)).minus(captured.leadDots().times(perDot(n)));
        return -spare.dividedBy(2).floor();
    }

    private Frequency clockOf(int n, int repetition) {
        Mode lead = captured.lead();
        return lead.lineRate().times((long) samples[n] * repetition * copies);
    }

    private int repetition(int n) {
        if (leg.output() instanceof ConverterOutput.Digital digital && digital.repetition()) {
            for (int h = 1; h <= GREATEST_REPETITION; h++) {
                if (clockOf(n, h).compareTo(LinkClockRules.LEAST_PIXEL_RATE) >= 0) {
                    return h;
                }
            }
        }
        return 1;
    }

    @Override
    Output output(int n, int p, int l, Steps steps) {
        Mode lead = captured.lead();
        int h = repetition(n);
        int fields = progressiveOut() ? 1 : captured.fieldsPerFrame();
        Raster raster = new Raster(
                clockOf(n, h),
                windowSamples(n, p) * h,
                Rational.of((long) samples[n] * h),
                rowsSent(),
                lead.linesPerField().times((long) copies * fields),
                progressiveOut() ? Scan.PROGRESSIVE : Scan.INTERLACED);
        steps.tell(
                "outputPixelClock",
                step -> step.in("N", samples[n], "samples per line")
                        .in("h", h, "copies of each sample")
                        .in("m", copies, "copies of each line")
                        .in("line rate", lead.lineRate().hz(), "Hz")
                        .by("N · h · m · line rate", "definition; h: HDMI 1.3a §6.4")
                        .gives(raster.pixelClock().hz(), "Hz"));
        steps.tell(
                "outputActive",
                step -> step.in("window", stretch(p).name())
                        .in("samples in the window", windowSamples(n, p), "")
                        .in("h", h, "")
                        .in("m", copies, "")
                        .in("lines sent", from, "per field")
                        .by("window · h × lines · m", "definition")
                        .gives(raster.horizontalActive() + " × " + raster.verticalActive()));
        boolean alternates = progressiveOut() && !raster.verticalTotal().isWhole();
        return new Output(raster, "", pictureAspect(), alternates, clockRefusal(raster));
    }

    @Override
    @Nullable
    Rational signalledAspect(@Nullable Rational listedAspect) {
        boolean signals = leg.output() instanceof ConverterOutput.Digital digital && digital.link() == LinkKind.HDMI;
        return signals ? listedAspect : null;
    }

    @Override
    Processing processing() {
        return processing;
    }

    @Override
    boolean pipelineIsAssumed() {
        return super.pipelineIsAssumed()
                || (processing instanceof Processing.LineRepeat repeat
                        && repeat.latestStartLines().isUnknown());
    }

    @Override
    Added added(Mode mode, int n, int p, int l, int d, Steps steps) {
        Estimate pipeline = processing.pipelineUs().orAssume(Assumptions.PIPELINE_US);
        Rational pipelineMs = pipelineMs(pipeline);
        Rational lineMs = mode.lineRate().period().millis();
        Rational soonest = Rational.ONE.minus(Rational.of(1, copies));
        Rational least = soonest;
        Rational greatest = soonest;
        Integer memory = null;
        if (processing instanceof Processing.LineRepeat repeat) {
            Rational latest = repeat.latestStartLines()
                    .orAssume(Assumptions.LATEST_START_LINES)
                    .greatest()
                    .max(soonest);
            greatest = latest;
            least = repeat.latestStartLines().isUnknown() ? soonest : latest;
            memory = repeat.bufferLines();
        }
        Rational middle = least.plus(greatest).dividedBy(2);
        Rational leastMs = least.times(lineMs).plus(pipelineMs);
        Rational middleMs = middle.times(lineMs).plus(pipelineMs);
        Rational greatestMs = greatest.times(lineMs).plus(pipelineMs);
        Rational start = greatest;
        steps.tell(
                "addedLatencyMs",
                step -> step.in("m", copies, "")
                        .in("line period", lineMs, "ms")
                        .in("first copy begins after", start, "lines")
                        .in("pipeline", pipelineMs, "ms")
                        .by(
                                "lines · line period + pipeline; the first copy can begin once 1 − 1/m of the line has arrived",
                                "arithmetic")
                        .gives(greatestMs, "ms"));
        int held = processing instanceof Processing.LineRepeat
                ? (int) greatest.plus(Rational.ONE).ceil()
                : 0;
        if (held > 0) {
            steps.tell(
                    "bufferedLines",
                    step -> step.in("first copy begins after", start, "lines")
                            .by("⌈begin + 1⌉: the last copy leaves one line after the first begins", "arithmetic")
                            .gives(Rational.of(held), "lines"));
        }
        Refusal refusal = memory == null ? null : orNull(ProcessingRules.memory(held, memory));
        return new Added(
                new Latency(middleMs, middleMs, middleMs, leastMs, middleMs, greatestMs, Basis.COMPUTED),
                processing instanceof Processing.LineRepeat ? held : null,
                null,
                refusal);
    }

    @Override
    RateBeat beat(Mode mode, int n, int p, int l, int d, Steps steps) {
        return RateBeat.locked(false);
    }

    @Override
    Settings settings(int n, int p, int l, int d, int c) {
        Placement placement = placements.get(p);
        int h = repetition(n);
        return new Settings(
                processing instanceof Processing.LineRepeat ? Settings.Kind.LINE_REPEAT : Settings.Kind.FORMAT_ONLY,
                processing.id(),
                null,
                rowsSent(),
                copies,
                samples[n],
                h,
                captured.left()
                        .times(captured.lead().dotsPerLine())
                        .plus(Rational.of(windowStart(n, p)).dividedBy(perDot(n))),
                Rational.of(windowSamples(n, p)).dividedBy(perDot(n)),
                windowSamples(n, p) * h,
                placement.rows(),
                0,
                0,
                captured.firstLine() + placement.firstLine(),
                placement.lines(),
                "SOURCE_LOCKED",
                captured.lead().fieldRate(),
                null,
                controls.get(c));
    }

    @Override
    AxisMap columns(Mode mode, int n, int p, PanelAxis panel) {
        Rational perDot = Sampling.samplesPerDot(mode, samples[n]);
        int window = windowSamples(n, p);
        return new AxisMap(
                captured.offsetOf(mode, mode.active().firstDot()),
                mode.active().dots(),
                captured.offsetOf(mode, mode.used().firstDot()),
                mode.used().dots(),
                perDot,
                Rational.of(windowStart(n, p)),
                Rational.of(window),
                0,
                (long) window * repetition(n),
                rasterColumns(n, p),
                panel);
    }

    @Override
    Rational rasterRows() {
        return Rational.of(rowsSent());
    }

    @Override
    Rational rasterColumns(int n, int p) {
        return Rational.of((long) windowSamples(n, p) * repetition(n));
    }
}
