package rasterfit.quantity;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/** An amount in a currency (ISO 4217 code). Amounts in different currencies are never added. */
public record Money(BigDecimal amount, String currency) {
    private static final Pattern CODE = Pattern.compile("[A-Z]{3}");

    public Money {
        if (!CODE.matcher(currency).matches()) {
            throw new IllegalArgumentException("a currency is a code of three capital letters (ISO 4217): " + currency);
        }
        if (amount.signum() < 0) {
            throw new IllegalArgumentException("an amount of money is not negative: " + amount);
        }
    }

    public Money plus(Money other) {
        if (!currency.equals(other.currency)) {
            throw new IllegalArgumentException("cannot add " + other.currency + " to " + currency);
        }
        return new Money(amount.add(other.amount), currency);
    }
}
