package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Converter;
import rasterfit.gear.Link;
import rasterfit.match.Chain;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RefusalGroup;
import rasterfit.match.Matcher;
import rasterfit.match.Reruns;
import rasterfit.match.WorkLimit;
import rasterfit.quantity.Rational;
import rasterfit.remedy.Change;
import rasterfit.remedy.Others;
import rasterfit.remedy.Remedies;
import rasterfit.remedy.Remedy;

/** Remedies against random gear, some of which lies in the catalogue and not in the request. */
@Domain(GearArbitraries.class)
@Domain(DomainContext.Global.class)
class RemedyPropertyTest {
    private static final Reruns.Bound PLENTY = new Reruns.Bound(1000, Long.MAX_VALUE);

    /** What is asked, and what lies in the catalogue. */
    private record Shelf(MatchRequest request, Catalogue catalogue) {}

    /** Only so many converters and links are in the request, all others in the catalogue. */
    private static Shelf shelf(MatchRequest drawn, int converters, int links, int croppedLines) {
        List<Converter> boxes = drawn.equipment().converters();
        List<Link> leads = drawn.equipment().links();
        int kept = Math.min(converters, boxes.size());
        int held = Math.min(links, leads.size());
        Catalogue catalogue = Catalogue.of(
                1, List.of(), List.of(), boxes.subList(kept, boxes.size()), leads.subList(held, leads.size()));
        MatchRequest request = drawn.ofEveryRoute()
                .withEquipment(new MatchRequest.Equipment(false, boxes.subList(0, kept), leads.subList(0, held)));
        Limit limit = Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.of(croppedLines));
        return new Shelf(Altered.limited(request, limit), catalogue);
    }

    @Property(seed = "32", edgeCases = EdgeCasesMode.NONE)
    @Label("A run of the request with the remedy applied by hand ranks the very setup that was promised")
    @StatisticsReport(onFailureOnly = true)
    void whatARemedyPromisesIsFound(
            @ForAll MatchRequest drawn,
            @ForAll @IntRange(max = 1) int converters,
            @ForAll @IntRange(max = 1) int links,
            @ForAll @IntRange(max = 30) int croppedLines) {
        Shelf shelf = shelf(drawn, converters, links, croppedLines);
        MatchResult result = match(shelf.request(), shelf.catalogue());
        Remedies.Found found = found(shelf, result);
        assertThat(found.spent().leftOut()).isZero();
        for (int i = 0; i < result.refused().size(); i++) {
            for (Remedy remedy : found.refused().get(i)) {
                Statistics.label("kind").collect(remedy.change().kind());
                assertThat(match(applied(shelf, remedy.change()), shelf.catalogue())
                                .ranked())
                        .as("%s", remedy.change())
                        .anySatisfy(setup -> {
                            assertThat(setup.route()).isEqualTo(remedy.route());
                            assertThat(setup.score()).isEqualTo(remedy.resultingScore());
                        });
                checkHelps(result, result.refused().get(i), remedy);
            }
        }
        for (Remedy remedy : found.lift()) {
            assertThat(remedy.resultingScore())
                    .isGreaterThan(result.ranked().get(0).score());
        }
        Statistics.label("kind").coverage(seen -> {
            seen.check(Change.Kind.ADDED_CONVERTER).count(count -> count > 0);
            seen.check(Change.Kind.OTHER_SETTINGS).count(count -> count > 0);
            seen.check(Change.Kind.RELAXED_LIMIT).count(count -> count > 0);
        });
    }

    /** It differs from a refused chain in at most one part, and is better than what that chain has already. */
    private static void checkHelps(MatchResult result, RefusalGroup group, Remedy remedy) {
        Chain to = Chain.of(remedy.route());
        if (group.chains().isEmpty()) {
            assertThat(result.ranked()).isEmpty();
            return;
        }
        assertThat(group.chains()).anySatisfy(from -> {
            int parts = 0;
            parts += from.output().equals(to.output()) ? 0 : 1;
            parts += from.input().equals(to.input()) ? 0 : 1;
            parts += from.converters().equals(to.converters()) ? 0 : 1;
            assertThat(parts).isLessThanOrEqualTo(1);
            Optional<RankedSetup> present = best(result, from);
            boolean isPresent = present.isPresent() && present.get().route().equals(remedy.route());
            assertThat(present.isEmpty() || isPresent || present.get().score() < remedy.resultingScore())
                    .isTrue();
        });
    }

    @Property(seed = "33", edgeCases = EdgeCasesMode.NONE)
    @Label("Where one part of the catalogue would let a refused chain work, a remedy at least as good is told")
    @StatisticsReport(onFailureOnly = true)
    void noSingleAdditionIsMissed(@ForAll MatchRequest drawn, @ForAll @IntRange(max = 20) int croppedLines) {
        Shelf shelf = shelf(drawn, 1, 0, croppedLines);
        MatchResult result = match(shelf.request(), shelf.catalogue());
        Remedies.Found found = found(shelf, result);
        for (Link link : shelf.catalogue().links().values()) {
            MatchRequest.Equipment equipment = shelf.request().equipment();
            List<Link> more = new ArrayList<>(equipment.links());
            more.add(link);
            MatchResult changed = match(
                    shelf.request().withEquipment(new MatchRequest.Equipment(false, equipment.converters(), more)),
                    shelf.catalogue());
            for (RankedSetup setup : changed.ranked()) {
                boolean isUsed =
                        setup.route().stream().anyMatch(step -> step.id().equals(link.id()));
                Chain chain = Chain.of(setup.route());
                if (isUsed && best(result, chain).isEmpty()) {
                    checkTold(result, found, chain, setup);
                }
            }
        }
    }

    private static void checkTold(MatchResult result, Remedies.Found found, Chain chain, RankedSetup setup) {
        for (int i = 0; i < result.refused().size(); i++) {
            if (result.refused().get(i).chains().contains(chain)) {
                Statistics.label("addition").collect("of a refused chain");
                assertThat(found.refused().get(i))
                        .first()
                        .satisfies(best ->
                                assertThat(best.resultingScore()).isGreaterThanOrEqualTo(setup.score() - 1e-12));
            }
        }
    }

    @Property(seed = "34", edgeCases = EdgeCasesMode.NONE)
    @Label("The same request gets the same remedies, told alike once and best first")
    void remediesAreInOrderAndAlwaysTheSame(@ForAll MatchRequest drawn, @ForAll @IntRange(max = 1) int converters) {
        Shelf shelf = shelf(drawn, converters, 0, 10);
        MatchResult result = match(shelf.request(), shelf.catalogue());
        Remedies.Found found = found(shelf, result);
        assertThat(Rendering.of(found(shelf, result).refused())).isEqualTo(Rendering.of(found.refused()));
        for (List<Remedy> remedies : found.refused()) {
            Set<String> told = new HashSet<>();
            double score = 1;
            for (Remedy remedy : remedies) {
                assertThat(remedy.resultingScore()).isLessThanOrEqualTo(score);
                score = remedy.resultingScore();
                Change change = remedy.change();
                assertThat(told.add(change.kind() + " " + change.id() + " " + change.value() + " " + change.told()))
                        .isTrue();
            }
        }
    }

    private static Remedies.Found found(Shelf shelf, MatchResult result) {
        RankedSetup first = result.ranked().isEmpty() ? null : result.ranked().get(0);
        return Remedies.of(
                new Matcher(WorkLimit.DEFAULT),
                PLENTY,
                new Remedies.Asked(true, first, Others.NONE),
                shelf.request(),
                shelf.catalogue(),
                result);
    }

    private static MatchResult match(MatchRequest request, Catalogue catalogue) {
        return new Matcher(WorkLimit.DEFAULT).match(request, catalogue);
    }

    private static Optional<RankedSetup> best(MatchResult result, Chain chain) {
        return result.ranked().stream()
                .filter(setup -> Chain.of(setup.route()).equals(chain))
                .findFirst();
    }

    private static MatchRequest applied(Shelf shelf, Change change) {
        MatchRequest request = shelf.request();
        MatchRequest.Equipment equipment = request.equipment();
        return switch (change.kind()) {
            case ADDED_LINK -> {
                List<Link> links = new ArrayList<>(equipment.links());
                links.add(shelf.catalogue().links().get(change.id()));
                yield Altered.links(request, links);
            }
            case ADDED_CONVERTER, OTHER_CONVERTER -> {
                List<Converter> converters = new ArrayList<>(equipment.converters());
                if (change.added()) {
                    converters.add(shelf.catalogue().converters().get(change.id()));
                }
                yield Altered.converters(request, converters);
            }
            case RELAXED_LIMIT ->
                Altered.limits(
                        request,
                        change.value() == null
                                ? List.of()
                                : List.of(Limit.atMost(LimitedMeasure.CROPPED_LINES, Rational.parse(change.value()))));
            default -> request;
        };
    }
}
