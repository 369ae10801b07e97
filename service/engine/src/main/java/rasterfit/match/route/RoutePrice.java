package rasterfit.match.route;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.PriceRange;
import rasterfit.match.Limit;
import rasterfit.match.LimitCheck;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchResult;
import rasterfit.quantity.Rational;
import rasterfit.rule.LimitRules;
import rasterfit.rule.Refusal;

/**
 * What the links and converters of a route cost together, as far as they are not owned.
 *
 * @param amount the middle of least and greatest; absent if parts have to be bought and none of them is priced
 * @param unpriced parts without a price, or with one in another currency
 */
public record RoutePrice(
        @Nullable BigDecimal amount,
        @Nullable BigDecimal least,
        @Nullable BigDecimal greatest,
        @Nullable String currency,
        List<String> unpriced) {

    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    private record Part(String id, @Nullable PriceRange price) {}

    /** @param owned ids of parts that need not be bought */
    public static RoutePrice of(Route route, Set<String> owned) {
        List<Part> parts = new ArrayList<>();
        route.run().links().forEach(link -> parts.add(new Part(link.id(), link.price())));
        Route.Leg leg = route.leg();
        if (leg != null) {
            parts.add(new Part(leg.converter().id(), leg.converter().price()));
            leg.run().links().forEach(link -> parts.add(new Part(link.id(), link.price())));
        }
        parts.removeIf(part -> owned.contains(part.id()));
        BigDecimal least = BigDecimal.ZERO;
        BigDecimal greatest = BigDecimal.ZERO;
        String currency = null;
        List<String> unpriced = new ArrayList<>();
        for (Part part : parts) {
            PriceRange price = part.price();
            if (price == null
                    || (currency != null && !currency.equals(price.least().currency()))) {
                unpriced.add(part.id());
            } else {
                currency = price.least().currency();
                least = least.add(price.least().amount());
                greatest = greatest.add(price.greatest().amount());
            }
        }
        if (currency == null && !parts.isEmpty()) {
            return new RoutePrice(null, null, null, null, List.copyOf(unpriced));
        }
        return new RoutePrice(least.add(greatest).divide(TWO), least, greatest, currency, List.copyOf(unpriced));
    }

    /** Price limits compare the greatest price; an unknown price, or one in another currency, fails any limit. */
    public @Nullable Refusal refusal(LimitCheck limits) {
        for (Limit limit : limits.on(LimitedMeasure.PRICE)) {
            boolean comparable = currency == null || currency.equals(limit.currency());
            Rational value = greatest == null || !unpriced.isEmpty() || !comparable ? null : Rational.of(greatest);
            if (value == null) {
                return LimitRules.inWords(
                        limit.measure().id(),
                        comparable
                                ? "unknown (no price for " + String.join(", ", unpriced) + ")"
                                : "an amount in " + currency,
                        limit.bound() == Limit.Bound.AT_MOST,
                        limit.value().toSixDigits().toPlainString() + " " + limit.currency());
            }
            if (!limit.isKeptBy(value)) {
                return LimitCheck.refusal(limit, value);
            }
        }
        return null;
    }

    /** As the answer tells it. */
    public MatchResult.Price told() {
        return new MatchResult.Price(amount, least, greatest, currency, unpriced);
    }
}
