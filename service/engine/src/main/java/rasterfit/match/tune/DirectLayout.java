package rasterfit.match.tune;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.Latency;
import rasterfit.match.Settings;
import rasterfit.match.route.Route;
import rasterfit.quantity.Rational;
import rasterfit.timing.Raster;

/**
 * The raster reaches the display as it is: a direct route, or a change of format alone between analog signals or
 * between digital ones. Only the display's aspect control is left to choose.
 *
 * <p>An analog raster of a broadcast family has no countable columns: it is laid out as the nominal 4:3 picture of its
 * family, one column wide, with the console's picture in its middle.
 */
final class DirectLayout extends Layout {
    private static final Rational BROADCAST_ASPECT = Rational.of(4, 3);

    private final @Nullable Processing processing;
    private final Rational pipelineMs;
    private final boolean digital;
    private final boolean nominal;
    private final List<Placement> placements;

    /** @param processing absent on a direct route */
    DirectLayout(Route route, Captured captured, @Nullable Processing processing) {
        super(route, captured, controlsOf(route, captured));
        this.processing = processing;
        this.digital = route.endsDigital();
        this.nominal = isNominal(route, captured);
        this.pipelineMs = processing == null
                ? Rational.ZERO
                : pipelineMs(processing.pipelineUs().orAssume(Assumptions.PIPELINE_US));
        int rows = captured.lines() * captured.fieldsPerFrame();
        int top = nominal ? (NominalPicture.frameLines(captured) - rows) / 2 : 0;
        this.placements = List.of(new Placement(
                0, captured.lines(), rows, top, 0, new Placement.Across.Columns(columnsOfPicture()), null));
    }

    private static boolean isNominal(Route route, Captured captured) {
        return !route.endsDigital() && captured.lead().lineStandard() != LineStandard.OTHER;
    }

    /** A picture without countable columns has no one-to-one; where a display offers nothing else it keeps the shape. */
    private static List<AspectControl> controlsOf(Route route, Captured captured) {
        List<AspectControl> offered = route.displayInput().aspectControls();
        if (!isNominal(route, captured)) {
            return offered;
        }
        List<AspectControl> shaped = offered.stream()
                .filter(control -> control != AspectControl.ONE_TO_ONE)
                .toList();
        return shaped.isEmpty() ? List.of(AspectControl.SIGNALLED) : shaped;
    }

    private int columnsOfPicture() {
        return nominal ? 1 : (int) captured.leadDots().round();
    }

    @Override
    int[] samples() {
        return new int[] {0};
    }

    @Override
    List<Placement> placements() {
        return placements;
    }

    @Override
    Output output(int n, int p, int l, Steps steps) {
        Raster raster = captured.lead().raster();
        return new Output(raster, "", pictureAspect(), false, clockRefusal(raster));
    }

    /** An analog picture of a broadcast family is 4:3 unless something says otherwise (common practice). */
    @Override
    @Nullable
    Rational signalledAspect(@Nullable Rational listedAspect) {
        return nominal ? BROADCAST_ASPECT : listedAspect;
    }

    @Override
    @Nullable
    Processing processing() {
        return processing;
    }

    @Override
    Added added(Mode mode, int n, int p, int l, int d, Steps steps) {
        Rational ms = pipelineMs;
        return new Added(new Latency(ms, ms, ms, ms, ms, ms, Basis.COMPUTED), null, null, null);
    }

    @Override
    RateBeat beat(Mode mode, int n, int p, int l, int d, Steps steps) {
        return RateBeat.locked(false);
    }

    @Override
    Settings settings(int n, int p, int l, int d, int c) {
        return Settings.of(
                processing == null ? null : Settings.Kind.FORMAT_ONLY,
                processing == null ? null : processing.id(),
                controls.get(c));
    }

    @Override
    AxisMap columns(Mode mode, int n, int p, PanelAxis panel) {
        // In dots of this mode: a picture keeps its place in time, whatever its dots are.
        Rational scale = mode.dotsPerLine().dividedBy(captured.lead().dotsPerLine());
        Rational own = captured.leadDots().times(scale);
        Rational width = nominal ? NominalPicture.dots(captured).times(scale) : own;
        return new AxisMap(
                captured.offsetOf(mode, mode.active().firstDot()),
                mode.active().dots(),
                captured.offsetOf(mode, mode.used().firstDot()),
                mode.used().dots(),
                null,
                own.minus(width).dividedBy(2),
                width,
                0,
                columnsOfPicture(),
                rasterColumns(n, p),
                digital ? panel : panel.withoutGrid());
    }

    @Override
    Rational rasterRows() {
        return Rational.of(
                nominal ? NominalPicture.frameLines(captured) : captured.lines() * captured.fieldsPerFrame());
    }

    @Override
    Rational rasterColumns(int n, int p) {
        return Rational.of(columnsOfPicture());
    }
}
