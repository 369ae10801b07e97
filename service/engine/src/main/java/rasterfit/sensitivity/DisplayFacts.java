package rasterfit.sensitivity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Estimate;
import rasterfit.gear.Fact;
import rasterfit.gear.LagReading;
import rasterfit.gear.LagReading.Method;
import rasterfit.gear.OwnEvidence;
import rasterfit.gear.Panel;
import rasterfit.gear.SinkLimits;
import rasterfit.match.Latency;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.quantity.Rational;
import rasterfit.sensitivity.FactSite.End;
import rasterfit.timing.Raster;
import rasterfit.timing.Scan;

/** The uncertain facts of the display input on which a setup ends, in its menu state. */
final class DisplayFacts {
    private final Display display;
    private final DisplayInput input;
    private final RankedSetup setup;
    private final ModeSetting lead;

    DisplayFacts(Display display, RankedSetup setup) {
        RouteStep last = setup.route().get(setup.route().size() - 1);
        this.display = display;
        this.setup = setup;
        this.lead = setup.modeSettings().get(0);
        this.input = display.inputs().stream()
                .filter(each -> each.id().equals(last.port()) && Objects.equals(each.state(), last.state()))
                .findFirst()
                .orElseThrow();
    }

    void sites(Consumer<FactSite> found) {
        Estimate overscan = input.overscanPercent()
                .orAssume(
                        Assumptions.overscanPercent(display.displayClass(), isStandardDefinition(lead.outputTiming())));
        found.accept(site(
                "overscanPercent", overscan, (each, end) -> each.withOverscanPercent(FactSites.known(overscan, end))));
        if (FactSites.switches(setup)) {
            Estimate resync = input.resyncMs().orAssume(resync());
            found.accept(site("resyncMs", resync, (each, end) -> each.withResyncMs(FactSites.known(resync, end))));
        }
        Latency lag = lead.measures().displayLagMs();
        boolean isStated = input.lag().stream().anyMatch(reading -> reading.method() != Method.PRESS_TO_LIGHT)
                || input.own().readings().stream().anyMatch(own -> !own.isBound());
        if (isStated) {
            Estimate range = new Estimate(lag.least(), lag.typical(), lag.greatest(), false);
            found.accept(site("lag", range, DisplayFacts::withReadingsAt));
        } else {
            Estimate range = assumption(isSlow(lead.outputTiming()));
            found.accept(site("lag", range, (each, end) -> withAssumedAt(each, end, range)));
        }
    }

    /** The class's delay, below what a reading from press to light bounds it to. */
    private Estimate assumption(boolean slow) {
        Estimate own = Assumptions.displayLagMs(display.displayClass(), Boolean.TRUE.equals(input.lowDelay()), slow);
        Rational bound = lead.measures().displayLagMs().greatest();
        boolean isBounded = !input.lag().isEmpty() || !input.own().readings().isEmpty();
        return isBounded
                ? new Estimate(
                        own.least().min(bound),
                        own.typical().min(bound),
                        own.greatest().min(bound),
                        true)
                : own;
    }

    private FactSite site(String fact, Estimate range, BiFunction<DisplayInput, End, DisplayInput> change) {
        String of = "inputs/" + input.id() + (input.state() == null ? "/" : "/states/" + input.state() + "/") + fact;
        FactPath path = new FactPath(FactPath.Kind.DISPLAY, display.id(), display.name(), of);
        return new FactSite(path, range, (at, end) -> {
            List<DisplayInput> inputs = at.request().display().inputs().stream()
                    .map(each -> each.path().equals(input.path()) ? change.apply(each, end) : each)
                    .toList();
            return new Shelf(at.request().withDisplay(at.request().display().with(inputs)), at.catalogue());
        });
    }

    private Estimate resync() {
        if (display.panel() instanceof Panel.Tube) {
            return Assumptions.TUBE_RESYNC_MS;
        }
        return input.accepts().get(0).format().isDigital()
                ? Assumptions.DIGITAL_DISPLAY_RESYNC_MS
                : Assumptions.ANALOG_DISPLAY_RESYNC_MS;
    }

    /** Every reading at its end, those of the owner too. */
    private static DisplayInput withReadingsAt(DisplayInput each, End end) {
        OwnEvidence own = each.own();
        List<OwnEvidence.OwnReading> readings = own.readings().stream()
                .map(reading ->
                        new OwnEvidence.OwnReading(at(reading.reading(), end), reading.on(), reading.repetitions()))
                .toList();
        return each.withLag(each.lag().stream().map(reading -> at(reading, end)).toList())
                .with(new OwnEvidence(readings, own.tests(), own.outdated()));
    }

    private static LagReading at(LagReading reading, End end) {
        Rational ms = end == End.LEAST ? reading.ms().least() : reading.ms().greatest();
        return new LagReading(
                reading.timing(),
                new Fact.Within(ms, ms, ms),
                reading.method(),
                reading.referenceRow(),
                reading.basis());
    }

    /** As if the class's delay had been read: that of the setup's kind of raster, and for listed rasters of the other. */
    private DisplayInput withAssumedAt(DisplayInput each, End end, Estimate range) {
        boolean slow = isSlow(lead.outputTiming());
        List<LagReading> readings = new ArrayList<>(List.of(assumed(null, range, end)));
        SinkLimits sink = each.sink();
        if (sink != null) {
            Set<String> labels = new LinkedHashSet<>();
            for (SinkLimits.ListedRaster listed : sink.listed()) {
                if (isSlow(listed.raster()) != slow && labels.add(listed.label())) {
                    readings.add(assumed(listed.label(), assumption(!slow), end));
                }
            }
        }
        return each.withLag(readings);
    }

    private static LagReading assumed(@Nullable String timing, Estimate range, End end) {
        Rational ms = end == End.LEAST ? range.least() : range.greatest();
        return new LagReading(timing, new Fact.Within(ms, ms, ms), Method.SPLIT_SIGNAL, null, Basis.ASSUMED);
    }

    private static boolean isSlow(Raster raster) {
        return raster.scan() == Scan.INTERLACED || isStandardDefinition(raster);
    }

    /** Up to 576 active lines, the height of the 625-line raster. */
    private static boolean isStandardDefinition(Raster raster) {
        return raster.verticalActive() <= 576;
    }
}
