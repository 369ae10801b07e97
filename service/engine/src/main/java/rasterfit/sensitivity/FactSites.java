package rasterfit.sensitivity;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Estimate;
import rasterfit.gear.Fact;
import rasterfit.gear.Link;
import rasterfit.gear.Mode;
import rasterfit.gear.SourceOutput;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.quantity.Rational;
import rasterfit.rule.Stage;
import rasterfit.sensitivity.FactSite.End;

/** Finds the uncertain facts of setups: what a device states only as a range, and what it does not state. */
final class FactSites {
    private final Shelf shelf;
    /** By path, since setups share parts. */
    private final Map<String, FactSite> sites = new LinkedHashMap<>();

    private FactSites(Shelf shelf) {
        this.shelf = shelf;
    }

    /** Each once, in the order of the setups and along the chain. */
    static List<FactSite> of(Shelf shelf, List<RankedSetup> setups) {
        FactSites found = new FactSites(shelf);
        setups.forEach(found::addAll);
        return List.copyOf(found.sites.values());
    }

    private void addAll(RankedSetup setup) {
        MatchRequest request = shelf.request();
        SourceOutput output = request.source().outputs().stream()
                .filter(each -> each.id().equals(setup.route().get(0).id()))
                .findFirst()
                .orElseThrow();
        boolean analog = !output.format().isDigital();
        if (analog) {
            source(output);
        }
        for (RouteStep step : setup.route()) {
            if (step.stage() == Stage.CONVERTER) {
                new ConverterFacts(shelf.converter(step.id()), step, setup, analog).sites(this::add);
                analog = false;
            } else if (isLink(step.stage())) {
                link(shelf.link(step.id()), analog);
            }
        }
        new DisplayFacts(request.display(), setup).sites(this::add);
    }

    private static boolean isLink(Stage stage) {
        return stage == Stage.CABLE || stage == Stage.ADAPTER || stage == Stage.SWITCH;
    }

    /** Whether mode switches count for the score of a setup. */
    static boolean switches(RankedSetup setup) {
        return setup.criteria().stream().anyMatch(value -> value.criterion() == Criterion.MODE_SWITCH_GAP);
    }

    /** A fact that has no range is none of interest. */
    private void add(FactSite site) {
        Estimate range = site.estimate();
        if (range.least().isLessThan(range.greatest())) {
            sites.putIfAbsent(site.path().toString(), site);
        }
    }

    /** The number at an end, as if it were known. */
    static Fact known(Estimate range, End end) {
        return Fact.known(end == End.LEAST ? range.least() : range.greatest());
    }

    /** The assumption is in dot clocks; that of the mode with the greatest share is taken for all. */
    private void source(SourceOutput output) {
        MatchRequest request = shelf.request();
        Mode lead = request.source().modes().get(0);
        for (Mode mode : request.source().modes()) {
            lead = mode.share().isGreaterThan(lead.share()) ? mode : lead;
        }
        Rational clock = lead.dotClock().hz();
        Estimate range = output.bandwidthHz().orAssume(Assumptions.sourceBandwidthHz(clock));
        FactPath path = new FactPath(
                FactPath.Kind.VARIANT,
                request.source().id(),
                request.sourceName(),
                "outputs/" + output.id() + "/bandwidthHz");
        add(new FactSite(path, range, (at, end) -> {
            List<SourceOutput> outputs = at.request().source().outputs().stream()
                    .map(each -> each.id().equals(output.id()) ? each.withBandwidthHz(known(range, end)) : each)
                    .toList();
            return new Shelf(at.request().withSource(at.request().source().withOutputs(outputs)), at.catalogue());
        }));
    }

    /** A bandwidth counts as long as the signal is analog, a delay always. */
    private void link(Link link, boolean analog) {
        if (analog) {
            Estimate bandwidth = link.bandwidthHz().orAssume(Assumptions.CABLE_BANDWIDTH_HZ);
            add(site(link, "bandwidthHz", bandwidth, (each, fact) -> each.withBandwidthHz(fact)));
        }
        Estimate delay = link.delayUs().orAssume(Assumptions.PIPELINE_US);
        add(site(link, "delayUs", delay, (each, fact) -> each.withDelayUs(fact)));
    }

    private static FactSite site(Link link, String of, Estimate range, BiFunction<Link, Fact, Link> change) {
        FactPath path = new FactPath(FactPath.Kind.LINK, link.id(), link.name(), of);
        return new FactSite(
                path, range, (at, end) -> at.withLink(link.id(), each -> change.apply(each, known(range, end))));
    }
}
