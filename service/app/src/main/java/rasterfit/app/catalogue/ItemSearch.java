package rasterfit.app.catalogue;

import jakarta.persistence.criteria.CriteriaBuilder;
import jakarta.persistence.criteria.Join;
import jakarta.persistence.criteria.Predicate;
import jakarta.persistence.criteria.Root;
import jakarta.persistence.criteria.Subquery;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.data.jpa.domain.Specification;
import rasterfit.gear.Format;

/**
 * What a list of items is narrowed by. Format, connector and line rate have to hold together for one input or output.
 *
 * @param lineRateHz inside the limits that are known; where none are known any rate may do
 * @param mostPrice the greatest price is at most this; an unknown price is not
 * @param currency of that price
 */
record ItemSearch(
        Kind kind,
        @Nullable Format format,
        @Nullable String connector,
        @Nullable BigDecimal lineRateHz,
        @Nullable BigDecimal mostPrice,
        @Nullable String currency) {

    /** Items in the order of their ids, from behind one on. */
    Specification<StoredItem> after(@Nullable String id) {
        return (item, query, build) -> {
            List<Predicate> all = new ArrayList<>();
            all.add(build.equal(item.get("key").get("kind"), kind));
            if (id != null) {
                all.add(build.greaterThan(item.get("key").get("id"), id));
            }
            if (mostPrice != null) {
                all.add(build.le(item.get("priceGreatest"), mostPrice));
                all.add(build.equal(item.get("currency"), currency));
            }
            if (format != null || connector != null || lineRateHz != null) {
                Subquery<Integer> some = query.subquery(Integer.class);
                all.add(build.exists(some.select(build.literal(1)).where(capable(some.correlate(item), build))));
            }
            return build.and(all);
        };
    }

    private Predicate capable(Root<StoredItem> item, CriteriaBuilder build) {
        Join<StoredItem, StoredItem.StoredCapability> capability = item.join("capabilities");
        List<Predicate> all = new ArrayList<>();
        if (format != null) {
            all.add(build.equal(capability.get("format"), format));
        }
        if (connector != null) {
            all.add(build.equal(capability.get("connector"), connector));
        }
        if (lineRateHz != null) {
            all.add(build.or(
                    build.isNull(capability.get("lineRateLeast")),
                    build.and(
                            build.le(capability.get("lineRateLeast"), lineRateHz),
                            build.ge(capability.get("lineRateGreatest"), lineRateHz))));
        }
        return build.and(all);
    }
}
