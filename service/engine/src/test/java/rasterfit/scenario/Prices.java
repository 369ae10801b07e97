package rasterfit.scenario;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.PriceRange;
import rasterfit.quantity.Money;

/** {@code price=18}, in euros. */
final class Prices {
    static final String CURRENCY = "EUR";

    private Prices() {}

    static @Nullable PriceRange of(Facts facts) {
        String text = facts.text("price");
        if (text == null) {
            return null;
        }
        Money money = facts.parsed("price", text, amount -> new Money(new BigDecimal(amount), CURRENCY));
        return new PriceRange(money, money, null);
    }
}
