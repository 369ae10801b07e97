package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
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
import org.jspecify.annotations.Nullable;
import rasterfit.match.LatencyFigure;
import rasterfit.match.Limit;
import rasterfit.match.Limit.Bound;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Measures;
import rasterfit.match.property.Ranking.Identity;
import rasterfit.quantity.Rational;

/** A limit takes away exactly those setups whose own measures break it; a looser one gives some of them back. */
@Domain(GearArbitraries.class)
@Domain(DomainContext.Global.class)
class LimitPropertyTest {
    @Property(seed = "14", edgeCases = EdgeCasesMode.NONE)
    @Label(
            "A limit leaves the setups that keep it, in order and unchanged; a looser one gives some back and takes none")
    @StatisticsReport(onFailureOnly = true)
    void aLimitTakesExactlyWhatBreaksIt(
            @ForAll MatchRequest request,
            @ForAll @IntRange(max = 70) int where,
            @ForAll @IntRange(min = 5, max = 30) int apart,
            @ForAll Bound bound) {
        Ranking unlimited = Ranking.of(request);
        for (LimitedMeasure measure : LimitedMeasure.values()) {
            boolean atMost = bound == Bound.AT_MOST;
            List<Limit> tight = limits(measure, bound, unlimited, atMost ? where : 100 - where);
            List<Limit> loose = limits(measure, bound, unlimited, atMost ? where + apart : 100 - where - apart);
            for (int i = 0; i < tight.size(); i++) {
                Ranking less = checked(request, unlimited, tight.get(i));
                Ranking more = loose.get(i).equals(tight.get(i)) ? less : checked(request, unlimited, loose.get(i));
                String told = tight.get(i).told() + ", then " + loose.get(i).told();
                assertThat(more.setups().keySet())
                        .as(told)
                        .containsAll(less.setups().keySet());
                assertThat(more.surviving()).as(told).isGreaterThanOrEqualTo(less.surviving());
                assertThat(unlimited.surviving()).as(told).isGreaterThanOrEqualTo(more.surviving());
                assertThat(more.result().counts().refusedRoutes())
                        .as(told)
                        .isLessThanOrEqualTo(less.result().counts().refusedRoutes());
                boolean binds = less.setups().size() < unlimited.setups().size();
                Statistics.label("binding").collect(binds ? measure.id() : "no difference");
                boolean gained = more.setups().size() > less.setups().size();
                Statistics.label("looser").collect(gained ? "gives back" : "no difference");
            }
        }
        Statistics.label("looser").coverage(seen -> seen.check("gives back").percentage(share -> share > 10));
        Statistics.label("binding").coverage(seen -> {
            for (LimitedMeasure measure : LimitedMeasure.values()) {
                seen.check(measure.id()).count(times -> times > 0);
            }
        });
    }

    /** The answer under a limit, after it was compared with what the limit should leave of the answer without. */
    private static Ranking checked(MatchRequest request, Ranking unlimited, Limit limit) {
        Ranking limited = Ranking.of(Altered.limited(request, limit));
        List<Identity> keeping = new ArrayList<>();
        unlimited.setups().forEach((identity, setup) -> {
            if (keeps(setup, limit)) {
                keeping.add(identity);
            }
        });
        assertThat(List.copyOf(limited.setups().keySet())).as(limit.told()).isEqualTo(keeping);
        limited.setups()
                .forEach((identity, setup) -> assertThat(setup.score())
                        .as(limit.told())
                        .isEqualTo(unlimited.setups().get(identity).score()));
        return limited;
    }

    /** Limits on a measure at a value that some setup has; for latencies one for each of two figures. */
    private static List<Limit> limits(LimitedMeasure measure, Bound bound, Ranking ranking, int percentile) {
        List<@Nullable LatencyFigure> figures = new ArrayList<>();
        if (measure.isLatency()) {
            figures.add(LatencyFigure.TYPICAL);
        }
        figures.add(null);
        List<Limit> limits = new ArrayList<>();
        for (LatencyFigure figure : figures) {
            Limit probe = new Limit(measure, figure, bound, Rational.ZERO, "EUR");
            Set<Rational> values = new LinkedHashSet<>();
            for (RankedSetup setup : ranking.setups().values()) {
                values.addAll(values(setup, probe));
            }
            List<Rational> sorted = values.stream().sorted().toList();
            if (!sorted.isEmpty()) {
                Rational value = sorted.get((sorted.size() - 1) * percentile / 100);
                limits.add(new Limit(measure, figure, bound, value, measure == LimitedMeasure.PRICE ? "EUR" : null));
            }
        }
        return limits;
    }

    /** API.md: every mode must keep it; what does not apply does not bind, but an unknown price fails. */
    private static boolean keeps(RankedSetup setup, Limit limit) {
        if (limit.measure() == LimitedMeasure.PRICE
                && (setup.price().greatest() == null
                        || !setup.price().unpriced().isEmpty())) {
            return false;
        }
        return values(setup, limit).stream()
                .allMatch(value -> limit.bound() == Bound.AT_MOST
                        ? value.compareTo(limit.value()) <= 0
                        : value.compareTo(limit.value()) >= 0);
    }

    private static List<Rational> values(RankedSetup setup, Limit limit) {
        if (limit.measure() == LimitedMeasure.PRICE) {
            return setup.price().greatest() == null
                    ? List.of()
                    : List.of(Rational.of(setup.price().greatest()));
        }
        List<Rational> values = new ArrayList<>();
        for (Measures measures : Ranking.measures(setup)) {
            Rational value = LimitedValues.of(measures, limit);
            if (value != null) {
                values.add(value);
            }
        }
        return values;
    }
}
