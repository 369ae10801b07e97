package rasterfit.gear;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Money;

/** What a thing costs, as a range on a day; least and greatest are equal for a single price. */
public record PriceRange(
        Money least, Money greatest, @Nullable LocalDate asOf) {
    public PriceRange {
        if (!least.currency().equals(greatest.currency())) {
            throw new IllegalArgumentException("one price has two currencies");
        }
        if (least.amount().compareTo(greatest.amount()) > 0) {
            throw new IllegalArgumentException("least " + least.amount() + " is above greatest " + greatest.amount());
        }
    }
}
