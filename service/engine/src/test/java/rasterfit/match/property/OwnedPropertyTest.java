package rasterfit.match.property;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;
import net.jqwik.api.statistics.Statistics;
import net.jqwik.api.statistics.StatisticsReport;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.Link;
import rasterfit.gear.OwnEvidence;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Measures;
import rasterfit.match.Settings;
import rasterfit.timing.Polarity;
import rasterfit.timing.Raster;
import rasterfit.timing.RasterTiming;

/** To own a part, or to have seen a raster, never makes anything worse. */
@Domain(GearArbitraries.class)
@Domain(DomainContext.Global.class)
class OwnedPropertyTest {
    /** Ids with their ports, whoever owns the parts. */
    private record Chain(List<String> parts, List<Settings> settings) {
        static Chain of(RankedSetup setup) {
            List<String> parts = new ArrayList<>();
            for (RouteStep step : setup.route()) {
                parts.add(step.id() + ":" + step.port() + "/" + step.state());
            }
            return new Chain(
                    parts,
                    setup.modeSettings().stream().map(ModeSetting::settings).toList());
        }
    }

    private static Map<Chain, RankedSetup> byChain(MatchRequest request) {
        Map<Chain, RankedSetup> setups = new HashMap<>();
        Ranking.match(request).ranked().forEach(setup -> setups.putIfAbsent(Chain.of(setup), setup));
        return setups;
    }

    @Property(seed = "51", edgeCases = EdgeCasesMode.NONE)
    @Label("Owning parts raises no price and lowers no cost utility, and changes nothing else of a setup")
    @StatisticsReport(onFailureOnly = true)
    void owningAPartNeverRaisesAPrice(@ForAll MatchRequest request, @ForAll long seed) {
        Random random = new Random(seed);
        Set<String> owned = new HashSet<>();
        for (Converter converter : request.equipment().converters()) {
            if (random.nextBoolean()) {
                owned.add(converter.id());
            }
        }
        for (Link link : request.equipment().links()) {
            if (random.nextBoolean()) {
                owned.add(link.id());
            }
        }
        Map<Chain, RankedSetup> before = byChain(request);
        Map<Chain, RankedSetup> after =
                byChain(Altered.with(request, "owned", new MatchRequest.Owned(false, false, owned, List.of())));

        boolean cheaper = false;
        for (Map.Entry<Chain, RankedSetup> entry : after.entrySet()) {
            RankedSetup setup = entry.getValue();
            RankedSetup without = before.get(entry.getKey());
            assertThat(setup.price().unpriced()).noneMatch(owned::contains);
            if (without == null) {
                // A plain lead in the place of a cable that is already used.
                continue;
            }
            assertThat(Ranking.measures(setup))
                    .usingElementComparator(OwnedPropertyTest::differs)
                    .isEqualTo(Ranking.measures(without));
            if (sameCurrency(setup, without)) {
                assertThat(least(setup)).isLessThanOrEqualTo(least(without));
                assertThat(greatest(setup)).isLessThanOrEqualTo(greatest(without));
                assertThat(Ranking.utility(setup, Criterion.COST))
                        .isGreaterThanOrEqualTo(Ranking.utility(without, Criterion.COST));
                cheaper |= least(setup).compareTo(least(without)) < 0;
            }
        }
        Statistics.label("owned").collect(cheaper ? "cheaper" : "nothing to save");
        Statistics.label("owned").coverage(seen -> seen.check("cheaper").percentage(share -> share > 20));
    }

    /** In anything but the setting to fall back upon, whose score holds the cost. */
    private static int differs(Measures one, Measures other) {
        return withoutFallback(one).equals(withoutFallback(other)) ? 0 : 1;
    }

    private static Measures withoutFallback(Measures measures) {
        return Altered.with(measures, "acceptance", Altered.with(measures.acceptance(), "fallback", null));
    }

    private static boolean sameCurrency(RankedSetup one, RankedSetup other) {
        @Nullable String a = one.price().currency();
        @Nullable String b = other.price().currency();
        return one.price().amount() != null && b != null && (a == null || a.equals(b));
    }

    private static BigDecimal least(RankedSetup setup) {
        BigDecimal least = setup.price().least();
        assertThat(least).isNotNull();
        return least;
    }

    private static BigDecimal greatest(RankedSetup setup) {
        BigDecimal greatest = setup.price().greatest();
        assertThat(greatest).isNotNull();
        return greatest;
    }

    @Property(seed = "52", edgeCases = EdgeCasesMode.NONE)
    @Label(
            "A raster that its owner saw takes no setup away and lowers no acceptance; one that stayed blank takes its own")
    @StatisticsReport(onFailureOnly = true)
    void aTestOfWhatWasShownNeverLowersAcceptance(@ForAll MatchRequest request) {
        Map<Chain, RankedSetup> before = byChain(request);
        RankedSetup some = before.values().stream()
                .filter(setup -> tried(setup, DisplayTest.Outcome.SHOWN) != null)
                .findFirst()
                .orElse(null);
        if (some == null) {
            Statistics.label("tried").collect("nothing");
            return;
        }
        String input = lastPort(some);
        DisplayTest shown = tried(some, DisplayTest.Outcome.SHOWN);
        Map<Chain, RankedSetup> after = byChain(Altered.input(
                request, input, each -> each.with(new OwnEvidence(List.of(), List.of(shown), List.of()))));
        assertThat(after.keySet()).containsAll(before.keySet());
        boolean raised = false;
        for (Map.Entry<Chain, RankedSetup> entry : before.entrySet()) {
            double old = Ranking.utility(entry.getValue(), Criterion.ACCEPTANCE);
            double now = Ranking.utility(after.get(entry.getKey()), Criterion.ACCEPTANCE);
            assertThat(now).isGreaterThanOrEqualTo(old);
            raised |= now > old;
        }
        DisplayTest blank = tried(some, DisplayTest.Outcome.BLANK);
        Map<Chain, RankedSetup> without = byChain(Altered.input(
                request, input, each -> each.with(new OwnEvidence(List.of(), List.of(blank), List.of()))));
        assertThat(without.keySet()).doesNotContain(Chain.of(some));
        Statistics.label("tried").collect(raised ? "raised" : "as before");
        Statistics.label("tried").coverage(seen -> seen.check("raised").percentage(share -> share > 10));
    }

    private static String lastPort(RankedSetup setup) {
        String port = setup.route().get(setup.route().size() - 1).port();
        assertThat(port).isNotNull();
        return port;
    }

    /** A test of the raster of the first group of modes; absent where it has a fraction of a pixel or line. */
    private static @Nullable DisplayTest tried(RankedSetup setup, DisplayTest.Outcome outcome) {
        Raster raster = setup.modeSettings().get(0).outputTiming();
        if (!raster.horizontalTotal().isWhole() || !raster.verticalTotal().isWhole()) {
            return null;
        }
        int total = (int) raster.verticalTotal().floor();
        int fields = raster.scan().fieldsPerFrame();
        RasterTiming timing = new RasterTiming(
                raster.pixelClock(),
                raster.horizontalActive(),
                0,
                0,
                (int) raster.horizontalTotal().floor() - raster.horizontalActive(),
                raster.verticalActive(),
                0,
                0,
                (total - raster.verticalActive()) / fields,
                total,
                raster.scan(),
                Polarity.POSITIVE,
                Polarity.POSITIVE);
        return new DisplayTest(timing.raster(), outcome, null, LocalDate.of(2026, 3, 9));
    }
}
