package rasterfit.match.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.PriceRange;
import rasterfit.match.Limit;
import rasterfit.match.LimitCheck;
import rasterfit.match.LimitedMeasure;
import rasterfit.quantity.Rational;
import rasterfit.rule.Refusal;

/** What a chain costs, added by hand, and what ../shared/API.md says of price limits: the greatest counts, unknown fails. */
class RoutePriceTest {
    private static final Plug CONSOLE = Parts.plug("own:console-av");
    private static final Plug SCART = Parts.plug("SCART");
    private static final Plug HDMI = Parts.plug("HDMI");

    private static RoutePrice priced(
            @Nullable PriceRange first, @Nullable PriceRange converter, @Nullable PriceRange second) {
        return owned(Set.of(), first, converter, second);
    }

    private static RoutePrice owned(
            Set<String> owned,
            @Nullable PriceRange first,
            @Nullable PriceRange converter,
            @Nullable PriceRange second) {
        Link lead = Parts.link("lead", Link.Kind.CABLE, CONSOLE, SCART, first, Format.RGB);
        Link last = Parts.link("last", Link.Kind.CABLE, HDMI, HDMI, second, Format.TMDS);
        List<Route> routes = Parts.routes(
                Parts.display(Parts.input("digital", HDMI, Format.TMDS)),
                List.of(Parts.rgb(CONSOLE)),
                List.of(Parts.converter("box", converter, SCART, Level.VIDEO_75_OHM, Parts.digitalOut(HDMI))),
                lead,
                last);
        assertThat(routes).hasSize(1);
        return RoutePrice.of(routes.get(0), owned);
    }

    private static @Nullable Refusal refusal(RoutePrice price, Limit.Bound bound, String amount, String currency) {
        return price.refusal(new LimitCheck(
                List.of(new Limit(LimitedMeasure.PRICE, null, bound, Rational.parse(amount), currency))));
    }

    @Test
    void theSumRunsOverBothCablesAndTheConverter() {
        // 18 + 95 + 5 = 118 at least, 20 + 120 + 7 = 147 at most, in the middle 132.50.
        RoutePrice price =
                priced(Parts.price("18", "20", "EUR"), Parts.price("95", "120", "EUR"), Parts.price("5", "7", "EUR"));

        assertThat(price.least()).isEqualByComparingTo("118");
        assertThat(price.greatest()).isEqualByComparingTo("147");
        assertThat(price.amount()).isEqualByComparingTo("132.5");
        assertThat(price.currency()).isEqualTo("EUR");
        assertThat(price.unpriced()).isEmpty();
    }

    @Test
    void whatHasNoPriceOrAnotherCurrencyIsLeftOutAndNamed() {
        RoutePrice price = priced(Parts.price("18", "18", "EUR"), null, Parts.price("5", "7", "USD"));

        assertThat(price.amount()).isEqualByComparingTo("18");
        assertThat(price.unpriced()).containsExactly("box", "last");
    }

    @Test
    void aRouteWithNothingToBuyIsFreeAndOneWithoutAnyPriceIsUnknown() {
        RoutePrice free = RoutePrice.of(
                Parts.routes(Parts.display(Parts.input("rgb", SCART, Format.RGB)), List.of(Parts.rgb(SCART)), List.of())
                        .get(0),
                Set.of());
        assertThat(free.amount()).isEqualByComparingTo("0");
        assertThat(free.unpriced()).isEmpty();
        // Free in every currency.
        assertThat(refusal(free, Limit.Bound.AT_MOST, "0", "EUR")).isNull();

        RoutePrice unknown = priced(null, null, null);
        assertThat(unknown.amount()).isNull();
        assertThat(unknown.greatest()).isNull();
        assertThat(unknown.unpriced()).containsExactly("lead", "box", "last");
        Refusal refusal = refusal(unknown, Limit.Bound.AT_MOST, "1000", "EUR");
        assertThat(refusal).isNotNull();
        assertThat(refusal.rule().id()).isEqualTo("limit.price");
        assertThat(refusal.message())
                .contains("unknown (no price for lead, box, last)")
                .contains("at most 1000 EUR");
    }

    @Test
    void aLimitComparesTheGreatestPrice() {
        RoutePrice price =
                priced(Parts.price("18", "20", "EUR"), Parts.price("95", "120", "EUR"), Parts.price("5", "7", "EUR"));

        assertThat(refusal(price, Limit.Bound.AT_MOST, "147", "EUR")).isNull();
        assertThat(refusal(price, Limit.Bound.AT_LEAST, "147", "EUR")).isNull();
        Refusal refusal = refusal(price, Limit.Bound.AT_MOST, "146.99", "EUR");
        assertThat(refusal).isNotNull();
        assertThat(refusal.value()).isEqualTo(Rational.of(147));
        assertThat(refusal.limit()).isEqualTo(Rational.parse("146.99"));
        assertThat(refusal.miss()).isGreaterThan(0);
    }

    @Test
    void aPartWithoutAPriceFailsEveryLimitThoughTheRestIsCheap() {
        RoutePrice price = priced(Parts.price("18", "18", "EUR"), null, Parts.price("5", "7", "EUR"));

        Refusal refusal = refusal(price, Limit.Bound.AT_MOST, "1000", "EUR");
        assertThat(refusal).isNotNull();
        assertThat(refusal.message()).contains("unknown (no price for box)");
        Refusal least = refusal(price, Limit.Bound.AT_LEAST, "1", "EUR");
        assertThat(least).isNotNull();
        assertThat(least.message()).contains("at least 1 EUR");
    }

    @Test
    void anotherCurrencyThanTheLimitsFailsIt() {
        RoutePrice price =
                priced(Parts.price("18", "20", "EUR"), Parts.price("95", "120", "EUR"), Parts.price("5", "7", "EUR"));

        Refusal refusal = refusal(price, Limit.Bound.AT_MOST, "1000", "USD");
        assertThat(refusal).isNotNull();
        assertThat(refusal.message()).contains("an amount in EUR").contains("at most 1000 USD");
    }

    @Test
    void whatIsOwnedCostsNothingAndIsNeverUnpriced() {
        PriceRange first = Parts.price("18", "20", "EUR");
        PriceRange second = Parts.price("5", "7", "EUR");

        // 18 + 5 and 20 + 7 are left to buy; without a price the converter would have been named.
        RoutePrice price = owned(Set.of("box"), first, null, second);
        assertThat(price.least()).isEqualByComparingTo("23");
        assertThat(price.greatest()).isEqualByComparingTo("27");
        assertThat(price.unpriced()).isEmpty();

        RoutePrice all = owned(Set.of("lead", "box", "last"), first, null, second);
        assertThat(all.amount()).isEqualByComparingTo("0");
        assertThat(all.currency()).isNull();
        assertThat(refusal(all, Limit.Bound.AT_MOST, "0", "USD")).isNull();
    }
}
