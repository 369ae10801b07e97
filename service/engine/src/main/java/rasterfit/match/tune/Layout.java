package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Estimate;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.Latency;
import rasterfit.match.Settings;
import rasterfit.match.route.Route;
import rasterfit.quantity.Rational;
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
    private final Map<List<Object>, PanelFit> fits = new HashMap<>();

    Layout(Route route, Captured captured) {
        this.route = route;
        this.captured = captured;
        this.chain = new SignalChain(
                route.output(),
                route.cable(),
                route.leg() == null ? null : route.leg().input().digitiser());
        this.controls = route.displayInput().aspectControls();
    }

    /** Samples per line; a single 0 where nothing is sampled. */
    abstract int[] samples();

    abstract List<Placement> placements();

    /** Number of rate locks. */
    abstract int locks();

    /** Number of deinterlacers. */
    abstract int deinterlacers();

    /** Whether the output raster depends on samples and placement, not only on the lock. */
    abstract boolean outputFollowsSamples();

    /**
     * What leaves for the display.
     *
     * @param label under which the raster is offered or found; empty if it has none
     * @param lineAlternates whether successive frames differ by a line
     * @param refusal of the raster itself; absent if none
     */
    record Output(
            Raster raster,
            String label,
            boolean lineAlternates,
            @Nullable Refusal refusal) {}

    abstract Output output(int n, int p, int l, Steps steps);

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

    abstract Added added(Mode mode, int n, int p, int l, int d, Steps steps);

    abstract RateBeat beat(Mode mode, int n, int p, int l, int d, Steps steps);

    /** Why a sample count cannot be set at all; absent if it can. */
    @Nullable
    Refusal sampleRefusal(int n) {
        return null;
    }

    /** Why a placement cannot be set with this sample count; absent if it can. */
    @Nullable
    Refusal placementRefusal(int n, int p) {
        return placements().get(p).refusal();
    }

    abstract Settings settings(int n, int p, int l, int d, int c);

    /** Where the columns of a mode land. */
    abstract AxisMap columns(Mode mode, int n, int p, PanelAxis panel);

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
