package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;

/** What is asked for less of is the head of the whole. */
@Domain(GearArbitraries.class)
@Domain(DomainContext.Global.class)
class TopPropertyTest {
    @Property(seed = "18", edgeCases = EdgeCasesMode.NONE)
    @Label("The first k are the head of the full ranking for every k, and counts and refusals do not depend on k")
    @StatisticsReport(onFailureOnly = true)
    void theFirstAreTheHeadOfAll(@ForAll MatchRequest request, @ForAll @IntRange(min = 1, max = 3) int perRoute) {
        MatchRequest full = Altered.settingsPerRoute(request, perRoute);
        MatchResult all = Ranking.match(full);
        int setups = all.ranked().size();
        for (int k = 1; k <= setups + 1; k++) {
            MatchResult head = Ranking.match(Altered.top(full, k));
            assertThat(head.ranked()).as("top %d", k).isEqualTo(all.ranked().subList(0, Math.min(k, setups)));
            assertThat(head.counts()).as("top %d", k).isEqualTo(all.counts());
            assertThat(head.refused()).as("top %d", k).isEqualTo(all.refused());
        }
        checkOrder(all.ranked());
        Statistics.label("setups").collect(setups == 0 ? "none" : setups == 1 ? "one" : "several");
        Statistics.label("setups").coverage(seen -> seen.check("several").percentage(share -> share > 40));
    }

    /** Ranks count from one; scores never rise. */
    private static void checkOrder(List<RankedSetup> ranked) {
        for (int i = 0; i < ranked.size(); i++) {
            assertThat(ranked.get(i).rank()).isEqualTo(i + 1);
            if (i > 0) {
                assertThat(ranked.get(i).score())
                        .isLessThanOrEqualTo(ranked.get(i - 1).score() + Ranking.ROUNDING);
            }
        }
    }

    @Property(seed = "19", edgeCases = EdgeCasesMode.NONE)
    @Label("A few settings of every route are the best of all its settings")
    @StatisticsReport(onFailureOnly = true)
    void theFewOfARouteAreItsBest(@ForAll MatchRequest request, @ForAll @IntRange(min = 1, max = 6) int perRoute) {
        Map<List<RouteStep>, List<RankedSetup>> all = byRoute(Ranking.match(request));
        Map<List<RouteStep>, List<RankedSetup>> few =
                byRoute(Ranking.match(Altered.settingsPerRoute(request, perRoute)));
        assertThat(few.keySet()).isEqualTo(all.keySet());
        String cut = "nothing cut";
        for (List<RouteStep> route : all.keySet()) {
            List<RankedSetup> whole = all.get(route);
            List<RankedSetup> head = few.get(route);
            assertThat(head).hasSize(Math.min(perRoute, whole.size()));
            for (int i = 0; i < head.size(); i++) {
                assertThat(head.get(i).score()).isCloseTo(whole.get(i).score(), within(Ranking.ROUNDING));
            }
            cut = head.size() < whole.size() ? "cut" : cut;
        }
        Statistics.label("heads").collect(cut);
        Statistics.label("heads").coverage(seen -> seen.check("cut").percentage(share -> share > 40));
    }

    private static Map<List<RouteStep>, List<RankedSetup>> byRoute(MatchResult result) {
        Map<List<RouteStep>, List<RankedSetup>> routes = new HashMap<>();
        for (RankedSetup setup : result.ranked()) {
            routes.computeIfAbsent(setup.route(), missing -> new java.util.ArrayList<>())
                    .add(setup);
        }
        return routes;
    }
}
