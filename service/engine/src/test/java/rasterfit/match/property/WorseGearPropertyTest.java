package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.SinkLimits;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.property.Ranking.Identity;

/** A part made worse never helps: not a setting, not a setup, not a rank. */
@Domain(GearArbitraries.class)
class WorseGearPropertyTest {
    private static final List<String> KINDS = List.of(
            "dearer converter",
            "longer resynchronisation",
            "more to tune",
            "longer pipeline",
            "later first copy",
            "slower deinterlacing",
            "less memory",
            "less pull",
            "less crop",
            "more jitter",
            "slower digitiser",
            "fewer sample counts",
            "slower output",
            "more display lag",
            "lower TMDS clock",
            "narrower scan limits",
            "less pixel clock",
            "nothing promised",
            "narrower cable",
            "dearer cable");

    @Property(seed = "12", edgeCases = EdgeCasesMode.NONE)
    @Label(
            "A part made worse in any of twenty ways never gains a setting, a utility, a score or a rank, and takes no mark from others")
    @StatisticsReport(onFailureOnly = true)
    void aPartMadeWorseNeverRanksHigher(@ForAll MatchRequest request) {
        Ranking before = Ranking.of(request);
        for (Worsening worsening : Worsening.of(request)) {
            MatchRequest other = worsening.change().apply(request);
            boolean worse = !other.equals(request) && check(worsening, before, Ranking.of(other));
            Statistics.label("made a difference").collect(worse ? worsening.name() : "none");
        }
        Statistics.label("made a difference").coverage(seen -> {
            for (String kind : KINDS) {
                seen.check(kind).count(times -> times > 0);
            }
        });
    }

    /** Whether anything became worse. */
    private static boolean check(Worsening worsening, Ranking before, Ranking after) {
        String name = worsening.name();
        assertThat(before.setups().keySet()).as(name).containsAll(after.setups().keySet());
        assertThat(after.surviving()).as(name).isLessThanOrEqualTo(before.surviving());
        if (!worsening.losesSettings()) {
            assertThat(after.setups().keySet())
                    .as(name)
                    .isEqualTo(before.setups().keySet());
            assertThat(after.result().counts())
                    .as(name)
                    .isEqualTo(before.result().counts());
        }
        boolean worse = after.setups().size() < before.setups().size();
        for (Map.Entry<Identity, RankedSetup> entry : after.setups().entrySet()) {
            RankedSetup now = entry.getValue();
            RankedSetup then = before.setups().get(entry.getKey());
            if (Ranking.uses(now, worsening.part())) {
                worse |= now.score() < then.score() - Ranking.ROUNDING;
                checkUtilities(worsening, then, now);
            } else {
                assertThat(now.score()).as(name).isEqualTo(then.score());
                assertThat(now.modeSettings()).as(name).isEqualTo(then.modeSettings());
            }
        }
        checkRanks(worsening, before, after);
        return worse;
    }

    private static void checkUtilities(Worsening worsening, RankedSetup then, RankedSetup now) {
        for (Criterion criterion : Criterion.values()) {
            double gain = Ranking.utility(now, criterion) - Ranking.utility(then, criterion);
            assertThat(gain).as("%s: %s", worsening.name(), criterion).isLessThanOrEqualTo(Ranking.ROUNDING);
            if (!worsening.mayFall().contains(criterion)) {
                assertThat(gain).as("%s: %s", worsening.name(), criterion).isZero();
            }
        }
        assertThat(now.score()).as(worsening.name()).isLessThanOrEqualTo(then.score() + Ranking.ROUNDING);
    }

    /** Against setups that do not use the part; among its own only what they have in common counts. */
    private static void checkRanks(Worsening worsening, Ranking before, Ranking after) {
        Map<Identity, Integer> then = othersAhead(worsening.part(), before);
        Map<Identity, Integer> now = othersAhead(worsening.part(), after);
        now.forEach((setup, ahead) ->
                assertThat(ahead).as("%s: others ahead", worsening.name()).isGreaterThanOrEqualTo(then.get(setup)));
        if (!now.isEmpty()) {
            int best = now.values().stream().mapToInt(Integer::intValue).min().orElseThrow();
            int bestThen =
                    then.values().stream().mapToInt(Integer::intValue).min().orElseThrow();
            assertThat(best)
                    .as("%s: others ahead of its best", worsening.name())
                    .isGreaterThanOrEqualTo(bestThen);
        }
        after.setups().forEach((identity, setup) -> {
            if (!Ranking.uses(setup, worsening.part())
                    && before.setups().get(identity).paretoOptimal()) {
                assertThat(setup.paretoOptimal())
                        .as("%s: an undominated setup of other parts stays so", worsening.name())
                        .isTrue();
            }
        });
    }

    /** For each setup with the part: how many without it rank higher. */
    private static Map<Identity, Integer> othersAhead(String part, Ranking ranking) {
        Map<Identity, Integer> ahead = new java.util.LinkedHashMap<>();
        int others = 0;
        for (Map.Entry<Identity, RankedSetup> entry : ranking.setups().entrySet()) {
            if (Ranking.uses(entry.getValue(), part)) {
                ahead.put(entry.getKey(), others);
            } else {
                others++;
            }
        }
        return ahead;
    }

    @Property(seed = "13", edgeCases = EdgeCasesMode.NONE)
    @Label("An input that lists one raster fewer grades no raster better, whatever else that changes")
    @StatisticsReport(onFailureOnly = true)
    void listingFewerTimingsNeverImprovesAcceptance(@ForAll MatchRequest request) {
        Ranking before = Ranking.of(request);
        String difference = "none";
        for (DisplayInput input : request.display().inputs().subList(0, 1)) {
            List<MatchRequest> fewer = listingFewer(request, input);
            for (MatchRequest each : fewer) {
                Ranking after = Ranking.of(each);
                assertThat(after.setups().keySet()).isEqualTo(before.setups().keySet());
                for (Map.Entry<Identity, RankedSetup> entry : after.setups().entrySet()) {
                    RankedSetup then = before.setups().get(entry.getKey());
                    RankedSetup now = entry.getValue();
                    List<Measures> ownThen = Ranking.measures(then);
                    List<Measures> ownNow = Ranking.measures(now);
                    for (int mode = 0; mode < ownNow.size(); mode++) {
                        assertThat(ownThen.get(mode).acceptance().grade())
                                .isLessThanOrEqualTo(
                                        ownNow.get(mode).acceptance().grade());
                    }
                    double gain =
                            Ranking.utility(now, Criterion.ACCEPTANCE) - Ranking.utility(then, Criterion.ACCEPTANCE);
                    difference = gain < 0 ? "graded lower" : difference;
                    // The aspect that a listed raster signals may have been the wrong one for the picture: where the
                    // display shows another shape without it, only the grade can be compared.
                    if (shapes(ownThen).equals(shapes(ownNow))) {
                        assertThat(now.score()).isLessThanOrEqualTo(then.score() + Ranking.ROUNDING);
                    }
                }
            }
        }
        Statistics.label("listing").collect(difference);
        Statistics.label("listing").coverage(seen -> seen.check("graded lower").percentage(share -> share > 20));
    }

    private static List<Measures.Shape> shapes(List<Measures> measures) {
        return measures.stream().map(Measures::shape).toList();
    }

    /** Each without the rasters of one label, as long as one label is left: of nothing listed nothing can be said. */
    private static List<MatchRequest> listingFewer(MatchRequest request, DisplayInput input) {
        SinkLimits sink = input.sink();
        List<MatchRequest> requests = new ArrayList<>();
        if (sink != null) {
            List<String> labels = sink.listed().stream()
                    .map(SinkLimits.ListedRaster::label)
                    .distinct()
                    .toList();
            for (String label : labels.size() > 1 ? labels : List.<String>of()) {
                List<SinkLimits.ListedRaster> left = sink.listed().stream()
                        .filter(listed -> !listed.label().equals(label))
                        .toList();
                requests.add(Altered.input(
                        request, input.id(), each -> Altered.with(each, "sink", Altered.with(sink, "listed", left))));
            }
        }
        return requests;
    }
}
