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
 * @param lineRateHz inside the limits that are known, to half a percent, since few people measure better; an item that states
 *     no line rate at all, such as a cable, may do
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

    private static final BigDecimal WIDER = new BigDecimal("1.005");
    private static final BigDecimal NARROWER = new BigDecimal("0.995");

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
                all.add(build.exists(some.select(build.literal(1)).where(capable(some.correlate(item), some, build))));
            }
            return build.and(all);
        };
    }

    /** Whether any line rate of the item is known. */
    private static Subquery<Integer> known(Root<StoredItem> item, Subquery<Integer> query, CriteriaBuilder build) {
        Subquery<Integer> some = query.subquery(Integer.class);
        Join<StoredItem, StoredItem.StoredCapability> any = some.correlate(item).join("capabilities");
        return some.select(build.literal(1)).where(build.isNotNull(any.get("lineRateLeast")));
    }

    private Predicate capable(Root<StoredItem> item, Subquery<Integer> query, CriteriaBuilder build) {
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
                    build.not(build.exists(known(item, query, build))),
                    build.and(
                            build.le(capability.get("lineRateLeast"), lineRateHz.multiply(WIDER)),
                            build.ge(capability.get("lineRateGreatest"), lineRateHz.multiply(NARROWER)))));
        }
        return build.and(all);
    }
}
