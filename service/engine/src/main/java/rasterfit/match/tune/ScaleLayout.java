package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.Estimate;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.match.Latency;
import rasterfit.match.Settings;
import rasterfit.match.route.Route;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;
import rasterfit.rule.LinkClockRules;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;
import rasterfit.timing.Raster;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** A picture written into memory and read out into one of the converter's output timings. */
final class ScaleLayout extends Layout {
    private static final Rational MILLION = Rational.of(1_000_000);

    private final Route.Leg leg;
    private final Processing.RasterScale scale;
    private final OfferedTiming offered;
    private final RasterTiming timing;
    private final @Nullable Digitiser digitiser;
    private final int[] samples;
    private final List<Placement> placements;
    private final ScalePlacements placing;
    private final List<Lock> locks;

    /** One rate lock at one output rate. */
    private record Lock(
            RateLock kind, Frequency fieldRate, @Nullable Refusal refusal) {
        String name() {
            return kind instanceof RateLock.SourceLocked
                    ? "SOURCE_LOCKED"
                    : kind instanceof RateLock.FreeRunning ? "FREE_RUNNING" : "VARIABLE_REFRESH";
        }
    }

    /** @param digitiser absent where the input is digital */
    ScaleLayout(
            Route route,
            Route.Leg leg,
            @Nullable Digitiser digitiser,
            Captured captured,
            Processing.RasterScale scale,
            OfferedTiming offered) {
        super(route, captured);
        this.leg = leg;
        this.scale = scale;
        this.offered = offered;
        this.timing = offered.timing();
        this.digitiser = digitiser;
        this.placing = new ScalePlacements(captured, scale, offered);
        this.placements = placing.all();
        this.samples = digitiser == null
                ? new int[] {0}
                : SampleCounts.worthTrying(captured, digitiser.samplesPerLine(), wholeFactors());
        this.locks = locksOf();
    }

    private List<Rational> wholeFactors() {
        List<Rational> factors = new ArrayList<>();
        long most = timing.verticalActive() / ((long) captured.lines() * captured.fieldsPerFrame()) + 1;
        for (long factor = 1; factor <= most; factor++) {
            factors.add(Rational.of(factor));
        }
        return factors;
    }

    private List<Lock> locksOf() {
        List<Lock> all = new ArrayList<>();
        Frequency source = captured.lead().fieldRate();
        for (RateLock lock : scale.rateLocks()) {
            if (lock instanceof RateLock.SourceLocked locked) {
                Frequency nominal = locked.nominal() != null ? locked.nominal() : timing.fieldRate();
                Rational ppm = source.ratioTo(nominal).minus(Rational.ONE).times(MILLION);
                all.add(new Lock(lock, source, orNull(ProcessingRules.pull(ppm, locked.pullPpm()))));
            } else if (lock instanceof RateLock.FreeRunning free) {
                List<Frequency> rates = free.rates().isEmpty() ? List.of(timing.fieldRate()) : free.rates();
                for (Frequency rate : rates) {
                    all.add(new Lock(lock, rate, null));
                }
            } else {
                all.add(new Lock(lock, source, ProcessingRules.variableRefreshUnknown()));
            }
        }
        return List.copyOf(all);
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
    int locks() {
        return locks.size();
    }

    @Override
    int deinterlacers() {
        return captured.isInterlaced() ? Math.max(1, scale.deinterlacers().size()) : 1;
    }

    @Override
    boolean outputFollowsSamples() {
        return false;
    }

    @Override
    Output output(int n, int p, int l, Steps steps) {
        Lock lock = locks.get(l);
        Raster raster = timing.raster().atFieldRate(lock.fieldRate());
        steps.tell(
                "outputPixelClock",
                step -> step.in("field rate", lock.fieldRate().hz(), "Hz")
                        .in("horizontal total", raster.horizontalTotal(), "")
                        .in("lines per field", raster.linesPerField(), "")
                        .by(
                                "field rate · lines per field · horizontal total",
                                "definition; counts of " + offered.label())
                        .gives(raster.pixelClock().hz(), "Hz"));
        if (lock.kind() instanceof RateLock.SourceLocked locked) {
            Frequency nominal = locked.nominal() != null ? locked.nominal() : timing.fieldRate();
            steps.tell(
                    "pullPpm",
                    step -> step.in("source", lock.fieldRate().hz(), "Hz")
                            .in("nominal", nominal.hz(), "Hz")
                            .by("10⁶ · (source / nominal − 1)", "definition")
                            .gives(
                                    lock.fieldRate()
                                            .ratioTo(nominal)
                                            .minus(Rational.ONE)
                                            .times(MILLION),
                                    "ppm"));
        }
        Refusal refusal = lock.refusal();
        if (timing.scan() == Scan.INTERLACED) {
            refusal = ProcessingRules.interlacedOutput(offered.label());
        }
        if (refusal == null) {
            refusal = clockRefusal(raster);
        }
        return new Output(raster, offered.label(), false, refusal);
    }

    private @Nullable Refusal clockRefusal(Raster raster) {
        if (leg.output() instanceof ConverterOutput.Digital digital) {
            return orNull(LinkClockRules.converter(raster.pixelClock(), digital.maxTmdsClock())
                    .or(() -> LinkClockRules.least(raster.pixelClock())));
        }
        Frequency greatest = ((ConverterOutput.Analog) leg.output()).maxPixelClock();
        return greatest == null ? null : orNull(LinkClockRules.converter(raster.pixelClock(), greatest));
    }

    @Override
    @Nullable
    Rational signalledAspect(@Nullable Rational listedAspect) {
        boolean signals = leg.output() instanceof ConverterOutput.Digital digital && digital.link() == LinkKind.HDMI;
        return signals ? offered.pictureAspect() : null;
    }

    @Override
    @Nullable
    Refusal placementRefusal(int n, int p) {
        Placement placement = placements.get(p);
        if (placement.refusal() == null && placement.across() instanceof Placement.Across.WholeSamples) {
            return placing.croppedDots(width(n, p));
        }
        return placement.refusal();
    }

    /** Samples (dots where nothing is sampled) in the captured stretch. */
    private Rational captureLength(int n) {
        return digitiser == null
                ? captured.leadDots()
                : captured.right().minus(captured.left()).times(samples[n]);
    }

    private int width(int n, int p) {
        Placement.Across across = placements.get(p).across();
        if (across instanceof Placement.Across.WholeSamples whole) {
            return (int)
                    Math.max(1, captureLength(n).times(whole.columnsPerSample()).round());
        }
        return ((Placement.Across.Columns) across).columns();
    }

    @Override
    Processing processing() {
        return scale;
    }

    @Override
    int horizontalTaps() {
        return scale.horizontal().taps();
    }

    @Override
    Added added(Mode mode, int n, int p, int l, int d, Steps steps) {
        Lock lock = locks.get(l);
        Placement placement = placements.get(p);
        Estimate fields = addedFields(mode, d);
        Rational pipelineMs = pipelineMs(scale.pipelineUs().orAssume(Assumptions.PIPELINE_US));
        Refusal deinterlacing =
                captured.isInterlaced() && scale.deinterlacers().isEmpty() ? ProcessingRules.noDeinterlacer() : null;
        Added added = lock.kind() instanceof RateLock.FreeRunning free
                ? freeRunning(mode, placement, lock, free, fields, pipelineMs, steps)
                : locked(mode, placement, lock, d, fields, pipelineMs, steps);
        return deinterlacing == null ? added : new Added(added.ms(), null, null, deinterlacing);
    }

    private Estimate addedFields(Mode mode, int d) {
        Estimate fields = Assumptions.NO_FIELDS;
        if (captured.isInterlaced() && !scale.deinterlacers().isEmpty()) {
            Deinterlacer deinterlacer = scale.deinterlacers().get(d);
            fields = deinterlacer
                    .addedFields()
                    .orAssume(
                            deinterlacer.kind() == Deinterlacer.Kind.MOTION_ADAPTIVE
                                    ? Assumptions.MOTION_ADAPTIVE_FIELDS
                                    : Assumptions.NO_FIELDS);
        }
        if (mode.isHalfHeightProgressive() && leg.input().halfHeight() == HalfHeight.AS_INTERLACED) {
            fields = fields.plus(leg.input().halfHeightAddedFields().orAssume(Assumptions.HALF_HEIGHT_FIELDS));
        }
        return fields;
    }

    private Added locked(
            Mode mode, Placement placement, Lock lock, int d, Estimate fields, Rational pipelineMs, Steps steps) {
        int halfLines = (int) mode.linesPerField().times(2).floor();
        int firstLine = captured.firstLine() + placement.firstLine();
        LockedLatency latency = new LockedLatency(
                halfLines,
                firstLine,
                placement.lines(),
                captured.isInterlaced(),
                timing.verticalTotal(),
                timing.firstActiveLine() + placement.top(),
                placement.rows(),
                scale.vertical().taps());
        LockedLatency.Result result = latency.measure();
        Rational fieldMs = mode.fieldRate().period().millis();
        int capacity = result.capacity() + storedFieldLines(d, halfLines);
        Integer memory = lock.kind() instanceof RateLock.SourceLocked locked
                ? locked.bufferLines()
                : ((RateLock.VariableRefresh) lock.kind()).bufferLines();
        steps.tell(
                "bufferOffsetD",
                step -> step.in("T", fieldMs, "ms")
                        .in("L", mode.linesPerField(), "lines per field")
                        .in("a", firstLine, "first line")
                        .in("n", placement.lines(), "lines")
                        .in("Lo", timing.verticalTotal(), "output lines")
                        .in("ao", timing.firstActiveLine() + (long) placement.top(), "first row")
                        .in("no", placement.rows(), "rows")
                        .in("k", scale.vertical().taps(), "taps")
                        .by(
                                "greatest over rows j of (a + needed(j) + 1)·T/L − (ao + j)·T/Lo; needed(j) = min(n−1, ⌊j·n/no⌋)"
                                        + " for k = 1, min(n−1, ⌊((2j+1)·n/no − 1)/2⌋ + k/2) for even k",
                                "arithmetic: no row starts before its lines have arrived")
                        .gives(result.offset().times(fieldMs), "ms"));
        steps.tell(
                "addedLatencyMs",
                step -> step.in("D", result.offset().times(fieldMs), "ms")
                        .in("added fields", fields.typical(), "")
                        .in("pipeline", pipelineMs, "ms")
                        .by(
                                "D + (ao + j)·T/Lo − (a + i)·T/L + fields·T + pipeline for row j that shows line i; greatest over"
                                        + " rows",
                                "arithmetic")
                        .gives(
                                result.greatest()
                                        .plus(fields.greatest())
                                        .times(fieldMs)
                                        .plus(pipelineMs),
                                "ms"));
        steps.tell(
                "bufferedLines",
                step -> step.in("greatest latency", result.greatest().times(fieldMs), "ms")
                        .in("T/Lo", fieldMs.dividedBy(timing.verticalTotal()), "ms")
                        .in("T/L", mode.lineRate().period().millis(), "ms")
                        .in("k", scale.vertical().taps(), "taps")
                        .by(
                                "⌈(greatest latency + T/Lo) / (T/L)⌉ + k/2 − 1 lines behind (for k ≥ 2), + stored fields",
                                "arithmetic")
                        .gives(Rational.of(capacity), "lines"));
        Latency ms = new Latency(
                toMs(result.top(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.bottom(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.least(), fields.least(), fieldMs, pipelineMs),
                toMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.greatest(), fields.greatest(), fieldMs, pipelineMs),
                Basis.COMPUTED);
        Refusal refusal = memory == null ? null : orNull(ProcessingRules.memory(capacity, memory));
        return new Added(ms, capacity, null, refusal);
    }

    /** Weaving and motion adaptation keep a whole earlier field beside the lines on their way. */
    private int storedFieldLines(int d, int halfLines) {
        boolean keeps = captured.isInterlaced()
                && !scale.deinterlacers().isEmpty()
                && scale.deinterlacers().get(d).kind() != Deinterlacer.Kind.BOB;
        return keeps ? (halfLines + 1) / 2 : 0;
    }

    private static Rational toMs(Rational fields, Rational added, Rational fieldMs, Rational pipelineMs) {
        return fields.plus(added).times(fieldMs).plus(pipelineMs);
    }

    private Added freeRunning(
            Mode mode,
            Placement placement,
            Lock lock,
            RateLock.FreeRunning free,
            Estimate fields,
            Rational pipelineMs,
            Steps steps) {
        TimeSpan outputPeriod = lock.fieldRate().period();
        TimeSpan line = mode.lineRate().period();
        TimeSpan period = mode.fieldRate().period();
        FreeLatency latency = new FreeLatency(
                line,
                period,
                placement.lines(),
                captured.isInterlaced(),
                outputPeriod.dividedBy(Rational.of(timing.verticalTotal())),
                outputPeriod,
                placement.rows(),
                free.fieldStores());
        FreeLatency.Result result = latency.measure();
        Rational fieldMs = period.millis();
        Latency ms = new Latency(
                freeMs(result.top(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.bottom(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.least(), fields.least(), fieldMs, pipelineMs),
                freeMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.greatest(), fields.greatest(), fieldMs, pipelineMs),
                Basis.COMPUTED);
        steps.tell(
                "addedLatencyMs",
                step -> step.in("T", fieldMs, "ms")
                        .in("T/L", line.millis(), "ms")
                        .in("n", placement.lines(), "lines")
                        .in("To", outputPeriod.millis(), "ms")
                        .in("Lo", timing.verticalTotal(), "output lines")
                        .in("no", placement.rows(), "rows")
                        .in("field stores", free.fieldStores(), "")
                        .in("added fields", fields.typical(), "")
                        .in("pipeline", pipelineMs, "ms")
                        .by(
                                free.fieldStores() == 1
                                        ? "T/L + age + fields·T + pipeline, age from 0 to min(T, To)"
                                        : "(n − i)·T/L + age + j·To/Lo + fields·T + pipeline for row j that shows line i, age from"
                                                + " 0 to min(T, To); greatest over rows and ages",
                                "arithmetic")
                        .gives(ms.greatest(), "ms"));
        return new Added(ms, null, free.fieldStores(), null);
    }

    private static Rational freeMs(TimeSpan span, Rational added, Rational fieldMs, Rational pipelineMs) {
        return span.millis().plus(added.times(fieldMs)).plus(pipelineMs);
    }

    @Override
    RateBeat beat(Mode mode, int n, int p, int l, int d, Steps steps) {
        Lock lock = locks.get(l);
        boolean wholeFrame = captured.isInterlaced()
                && !scale.deinterlacers().isEmpty()
                && scale.deinterlacers().get(d).wholeFrame();
        return lock.kind() instanceof RateLock.FreeRunning free
                ? RateBeat.free(mode.fieldRate(), lock.fieldRate(), free.fieldStores(), wholeFrame, steps)
                : RateBeat.locked(wholeFrame);
    }

    @Override
    Settings settings(int n, int p, int l, int d, int c) {
        Placement placement = placements.get(p);
        int width = width(n, p);
        Lock lock = locks.get(l);
        return new Settings(
                Settings.Kind.RASTER_SCALE,
                scale.id(),
                offered.label(),
                timing.verticalActive(),
                null,
                digitiser == null ? null : samples[n],
                null,
                width,
                placement.rows(),
                Math.floorDiv(timing.horizontalActive() - width, 2),
                placement.top(),
                captured.firstLine() + placement.firstLine(),
                placement.lines(),
                lock.name(),
                lock.fieldRate(),
                captured.isInterlaced() && !scale.deinterlacers().isEmpty()
                        ? scale.deinterlacers().get(d).kind()
                        : null,
                controls.get(c));
    }

    @Override
    AxisMap columns(Mode mode, int n, int p, PanelAxis panel) {
        Rational perDot = digitiser == null ? null : Sampling.samplesPerDot(mode, samples[n]);
        Rational first = captured.offsetOf(mode, mode.active().firstDot());
        Rational usedFirst = captured.offsetOf(mode, mode.used().firstDot());
        Rational length = captureLength(n);
        if (perDot != null && perDot.isWhole() && first.isWhole()) {
            // Whole samples per dot show every dot as if it were not sampled at all.
            length = length.dividedBy(perDot);
            perDot = null;
        }
        int width = width(n, p);
        return new AxisMap(
                first,
                mode.active().dots(),
                usedFirst,
                mode.used().dots(),
                perDot,
                Rational.ZERO,
                length,
                Math.floorDiv(timing.horizontalActive() - width, 2),
                width,
                rasterColumns(n, p),
                panel);
    }

    @Override
    Rational rasterRows() {
        return Rational.of(timing.verticalActive());
    }

    @Override
    Rational rasterColumns(int n, int p) {
        return Rational.of(timing.horizontalActive());
    }
}
