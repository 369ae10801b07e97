package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.Carried;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Digitiser;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Estimate;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.match.Latency;
import rasterfit.match.Settings;
import rasterfit.match.route.Route;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.rule.LinkClockRules;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;
import rasterfit.timing.Raster;

/**
 * The settings of one way of processing on one route for one group of look-alike modes: a product of five axes (samples
 * per line, placement, rate lock, deinterlacer, aspect control), and for each measure the function of those axes on which
 * it depends. Tables and explanations are both made by these functions.
 */
abstract class Layout {
    final Route route;
    final Captured captured;
    final List<AspectControl> controls;
    private final SignalChain chain;
    private final Rational linkDelayMs;
    private final Map<List<Object>, PanelFit> fits = new HashMap<>();

    Layout(Route route, Captured captured) {
        this(route, captured, route.displayInput().aspectControls());
    }

    Layout(Route route, Captured captured, List<AspectControl> controls) {
        this.route = route;
        this.captured = captured;
        this.chain = new SignalChain(
                route.output(),
                route.run(),
                taken(route),
                route.leg() == null ? null : route.leg().input().digitiser());
        this.controls = List.copyOf(controls);
        this.linkDelayMs = linkDelayMs(route);
    }

    private static @Nullable Carried taken(Route route) {
        List<Carried> accepts = route.leg() == null
                ? route.displayInput().accepts()
                : route.leg().input().accepts();
        return accepts.stream()
                .filter(carried -> carried.format() == route.signal().format())
                .findFirst()
                .orElse(null);
    }

    /** Samples per line; a single 0 where nothing is sampled. */
    abstract int[] samples();

    /** How many sample counts were considered for this way of processing. */
    int consideredSamples() {
        return samples().length;
    }

    abstract List<Placement> placements();

    /** Number of rate locks; one where the output can only follow the source. */
    int locks() {
        return 1;
    }

    /** Number of deinterlacers; one where there is nothing to choose. */
    int deinterlacers() {
        return 1;
    }

    /** Whether the output raster depends on samples and placement, not only on the lock. */
    boolean outputFollowsSamples() {
        return false;
    }

    /**
     * What leaves for the display.
     *
     * @param label under which the raster is offered or found; empty if it has none
     * @param pictureAspect which of several listed rasters of equal counts is meant; absent if it does not matter
     * @param lineAlternates whether successive frames differ by a line
     * @param refusal of the raster itself; absent if none
     */
    record Output(
            Raster raster,
            String label,
            @Nullable Rational pictureAspect,
            boolean lineAlternates,
            @Nullable Refusal refusal) {}

    abstract Output output(int n, int p, int l, Steps steps);

    /** Whether the converter's output can carry the raster; absent if it can, or on a direct route. */
    final @Nullable Refusal clockRefusal(Raster raster) {
        if (route.leg() == null) {
            return null;
        }
        if (route.leg().output() instanceof ConverterOutput.Digital digital) {
            return orNull(LinkClockRules.least(raster.pixelClock())
                    .or(() -> LinkClockRules.converter(raster.pixelClock(), digital.maxTmdsClock())));
        }
        Frequency greatest = ((ConverterOutput.Analog) route.leg().output()).maxPixelClock();
        return greatest == null ? null : orNull(LinkClockRules.converter(raster.pixelClock(), greatest));
    }

    /**
     * The picture aspect that the link signals; absent if it signals none.
     *
     * @param listedAspect of the listed raster that the output equals or is near to; absent if there is none
     */
    abstract @Nullable Rational signalledAspect(@Nullable Rational listedAspect);

    /**
     * Delay of the converter chain.
     *
     * @param bufferedLines lines held; absent where whole fields are stored or nothing is
     * @param refusal of memory or deinterlacing; absent if none
     */
    record Added(
            Latency ms,
            @Nullable Integer bufferedLines,
            @Nullable Integer fieldStores,
            @Nullable Refusal refusal) {
        static final Added NOTHING = new Added(Latency.NONE, null, null, null);
    }

    /** The converter's way of processing; absent on a direct route. */
    abstract @Nullable Processing processing();

    /** Taps of the filter across; 1 where samples are only repeated. */
    int horizontalTaps() {
        return 1;
    }

    /** Whether some of the delay that the converter should state was assumed. */
    boolean pipelineIsAssumed() {
        Processing processing = processing();
        return processing != null && processing.pipelineUs().isUnknown();
    }

    /** Without the links. */
    abstract Added added(Mode mode, int n, int p, int l, int d, Steps steps);

    /** Delay of converter, adapters and switches. */
    final Added delay(Mode mode, int n, int p, int l, int d, Steps steps) {
        Added converter = added(mode, n, p, l, d, steps);
        if (linkDelayMs.signum() == 0) {
            return converter;
        }
        steps.tell(
                "linkDelayMs",
                step -> step.by("sum of what adapters and switches state", "declared facts")
                        .gives(linkDelayMs, "ms"));
        Rational ms = linkDelayMs;
        Latency links = new Latency(ms, ms, ms, ms, ms, ms, Basis.COMPUTED);
        return new Added(
                converter.ms().plus(links), converter.bufferedLines(), converter.fieldStores(), converter.refusal());
    }

    /** One that does not state its delay is taken to have none, as a converter is. */
    private static Rational linkDelayMs(Route route) {
        Rational us = Rational.ZERO;
        for (Link link : route.links()) {
            us = us.plus(link.delayUs().orAssume(Assumptions.PIPELINE_US).typical());
        }
        return us.dividedBy(1000);
    }

    abstract RateBeat beat(Mode mode, int n, int p, int l, int d, Steps steps);

    /** Why a sample count cannot be set at all; absent if it can. */
    @Nullable
    Refusal sampleRefusal(int n) {
        return null;
    }

    /** The fastest line of the group decides, though lines that look alike differ by no more than the input's resolution. */
    final @Nullable Refusal sampleRateRefusal(Digitiser digitiser, int samplesPerLine) {
        Frequency fastest = captured.lead().lineRate();
        for (Mode mode : captured.modes()) {
            fastest = mode.lineRate().compareTo(fastest) > 0 ? mode.lineRate() : fastest;
        }
        return orNull(ProcessingRules.sampleRate(fastest.times(samplesPerLine), digitiser.maxSampleRate()));
    }

    /** Why a placement cannot be set with this sample count; absent if it can, as where nothing is placed. */
    @Nullable
    Refusal placementRefusal(int n, int p) {
        return null;
    }

    abstract Settings settings(int n, int p, int l, int d, int c);

    /** Where the columns of a mode land. */
    abstract AxisMap columns(Mode mode, int n, int p, PanelAxis panel);

    /** The same sample by sample, which is what a filter reaches over. */
    AxisMap sampledColumns(Mode mode, int n, int p, PanelAxis panel) {
        return columns(mode, n, p, panel);
    }

    /** Where the frame lines of a mode land. */
    AxisMap rows(Mode mode, int p, PanelAxis panel) {
        Placement placement = placements().get(p);
        int fields = captured.fieldsPerFrame();
        return new AxisMap(
                Rational.of((long) (mode.active().firstLine() - captured.firstLine()) * fields),
                mode.active().lines() * fields,
                Rational.of((long) (mode.used().firstLine() - captured.firstLine()) * fields),
                mode.used().lines() * fields,
                null,
                Rational.of((long) placement.firstLine() * fields),
                Rational.of((long) placement.lines() * fields),
                placement.top(),
                placement.rows(),
                rasterRows(),
                panel);
    }

    /** Active rows of the output raster, or of the nominal picture on a tube. */
    abstract Rational rasterRows();

    /** Active columns of the output raster, or of the nominal picture on a tube. */
    abstract Rational rasterColumns(int n, int p);

    /** @param aspect the signalled one; absent if there is none */
    final PanelFit fit(@Nullable Rational aspect, int n, int p, int c) {
        Rational columns = rasterColumns(n, p);
        Rational rows = rasterRows();
        List<Object> key = new ArrayList<>(List.of(columns, rows, controls.get(c)));
        if (aspect != null) {
            key.add(aspect);
        }
        return fits.computeIfAbsent(
                key,
                missing -> PanelFit.of(
                        controls.get(c),
                        route.display().panel(),
                        route.display().displayClass(),
                        columns,
                        rows,
                        aspect,
                        overscan().typical().dividedBy(100)));
    }

    /** What the analog signal passes on its way into the converter or display. */
    final SignalChain chain() {
        return chain;
    }

    /** The aspect of the whole picture for which the artwork was made. */
    final Rational pictureAspect() {
        return captured.lead().shape() == PictureShape.TUBE_16_9 ? Rational.of(16, 9) : Rational.of(4, 3);
    }

    /** How wide a dot is meant to be against the height of a frame line. */
    final Rational intendedAspect(Mode mode) {
        return PixelAspect.intended(mode, captured.convention(), Steps.SILENT);
    }

    /** Percent at each edge. */
    final Estimate overscan() {
        DisplayInput input = route.displayInput();
        boolean sd = !rasterRows().isGreaterThan(Rational.of(576));
        return input.overscanPercent()
                .orAssume(Assumptions.overscanPercent(route.display().displayClass(), sd));
    }

    final long size() {
        return (long) samples().length * placements().size() * locks() * deinterlacers() * controls.size();
    }

    /** Delay of the converter's electronics in ms. */
    static Rational pipelineMs(Estimate pipelineUs) {
        return pipelineUs.typical().dividedBy(1000);
    }

    static <T> @Nullable T orNull(Optional<T> optional) {
        return optional.orElse(null);
    }
}
