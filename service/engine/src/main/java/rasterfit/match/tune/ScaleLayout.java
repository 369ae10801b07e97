package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Digitiser;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.match.Settings;
import rasterfit.match.route.Route;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;
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
        this.placing = new ScalePlacements(captured, scale, offered, sampleAspects());
        this.placements = placing.all();
        this.samples = digitiser == null
                ? new int[] {0}
                : SampleCounts.worthTrying(captured, digitiser.samplesPerLine(), wholeFactors());
        this.locks = locksOf();
    }

    /** What a sample of the raster is shaped like under each of the display's aspect controls. */
    private List<Rational> sampleAspects() {
        Rational counts = Rational.of(timing.verticalActive(), timing.horizontalActive());
        Rational signalled = signalledAspect(null);
        Rational filled = route.display().panel().aspect().times(counts);
        boolean square = signalled == null && route.display().displayClass() == DisplayClass.MONITOR;
        Set<Rational> aspects = new LinkedHashSet<>();
        for (AspectControl control : controls) {
            aspects.add(
                    switch (control) {
                        case FILL -> filled;
                        case ONE_TO_ONE -> Rational.ONE;
                        case SIGNALLED -> signalled != null ? signalled.times(counts) : square ? Rational.ONE : filled;
                    });
        }
        return List.copyOf(aspects);
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
            refusal = Rules.first(refusal, ProcessingRules.interlacedOutput(offered.label()));
        }
        return new Output(
                raster, offered.label(), offered.pictureAspect(), false, Rules.first(refusal, clockRefusal(raster)));
    }

    @Override
    @Nullable
    Refusal sampleRefusal(int n) {
        return digitiser == null ? null : sampleRateRefusal(digitiser, samples[n]);
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
        return placement.across() instanceof Placement.Across.WholeSamples
                ? Rules.first(placement.refusal(), placing.croppedDots(width(n, p)))
                : placement.refusal();
    }

    /** Samples (dots where nothing is sampled) in the captured stretch; whole ones where only whole ones are drawn. */
    private Rational captureLength(int n, int p) {
        Rational length = digitiser == null
                ? captured.leadDots()
                : captured.right().minus(captured.left()).times(samples[n]);
        return placements.get(p).across() instanceof Placement.Across.WholeSamples
                ? Rational.of(length.ceil())
                : length;
    }

    private int width(int n, int p) {
        Placement.Across across = placements.get(p).across();
        if (across instanceof Placement.Across.WholeSamples whole) {
            return (int) Math.max(
                    1, captureLength(n, p).times(whole.columnsPerSample()).floor());
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
        ScaleDelay delay = new ScaleDelay(
                captured, leg.input(), scale, timing, placements.get(p), lock.fieldRate(), deinterlacer(d));
        Added added = delay.of(mode, lock.kind(), steps);
        return captured.isInterlaced() && scale.deinterlacers().isEmpty()
                ? new Added(added.ms(), null, null, Rules.first(added.refusal(), ProcessingRules.noDeinterlacer()))
                : added;
    }

    /** Absent where nothing is deinterlaced. */
    private @Nullable Deinterlacer deinterlacer(int d) {
        return captured.isInterlaced() && !scale.deinterlacers().isEmpty()
                ? scale.deinterlacers().get(d)
                : null;
    }

    @Override
    RateBeat beat(Mode mode, int n, int p, int l, int d, Steps steps) {
        Lock lock = locks.get(l);
        Deinterlacer deinterlacer = deinterlacer(d);
        boolean wholeFrame = deinterlacer != null && deinterlacer.wholeFrame();
        return lock.kind() instanceof RateLock.FreeRunning free
                ? RateBeat.free(mode.fieldRate(), lock.fieldRate(), free.fieldStores(), wholeFrame, steps)
                : RateBeat.locked(wholeFrame);
    }

    @Override
    Settings settings(int n, int p, int l, int d, int c) {
        Placement placement = placements.get(p);
        int width = width(n, p);
        Lock lock = locks.get(l);
        Deinterlacer deinterlacer = deinterlacer(d);
        return new Settings(
                Settings.Kind.RASTER_SCALE,
                scale.id(),
                offered.label(),
                timing.verticalActive(),
                null,
                digitiser == null ? null : samples[n],
                null,
                captured.left().times(captured.lead().dotsPerLine()),
                digitiser == null
                        ? captureLength(n, p)
                        : captureLength(n, p).dividedBy(Sampling.samplesPerDot(captured.lead(), samples[n])),
                width,
                placement.rows(),
                Math.floorDiv(timing.horizontalActive() - width, 2),
                placement.top(),
                captured.firstLine() + placement.firstLine(),
                placement.lines(),
                lock.name(),
                lock.fieldRate(),
                deinterlacer == null ? null : deinterlacer.kind(),
                controls.get(c));
    }

    /** Whole samples per dot show every dot as if it were not sampled at all, so many sample counts share one map. */
    @Override
    AxisMap columns(Mode mode, int n, int p, PanelAxis panel) {
        AxisMap sampled = sampledColumns(mode, n, p, panel);
        Rational perDot = sampled.samplesPerDot();
        return perDot != null && perDot.isWhole() && sampled.first().isWhole()
                ? columns(mode, null, sampled.captureLength().dividedBy(perDot), n, p, panel)
                : sampled;
    }

    @Override
    AxisMap sampledColumns(Mode mode, int n, int p, PanelAxis panel) {
        Rational perDot = digitiser == null ? null : Sampling.samplesPerDot(mode, samples[n]);
        return columns(mode, perDot, captureLength(n, p), n, p, panel);
    }

    private AxisMap columns(Mode mode, @Nullable Rational perDot, Rational length, int n, int p, PanelAxis panel) {
        int width = width(n, p);
        return new AxisMap(
                captured.offsetOf(mode, mode.active().firstDot()),
                mode.active().dots(),
                captured.offsetOf(mode, mode.used().firstDot()),
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
