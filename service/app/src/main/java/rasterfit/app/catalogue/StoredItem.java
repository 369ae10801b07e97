package rasterfit.app.catalogue;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.PostLoad;
import jakarta.persistence.PostPersist;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.PriceRange;
import rasterfit.quantity.Frequency;

/** What the catalogue holds now of one item. */
@Entity
@Table(name = "catalogue_item")
class StoredItem implements Persistable<ItemKey> {
    @EmbeddedId
    private ItemKey key;

    @Column(name = "revision")
    private long revision;

    @Column(name = "name")
    private String name;

    @Column(name = "document")
    private String document;

    @Column(name = "price_least")
    private @Nullable BigDecimal priceLeast;

    @Column(name = "price_greatest")
    private @Nullable BigDecimal priceGreatest;

    @Column(name = "currency")
    private @Nullable String currency;

    @ElementCollection
    @CollectionTable(
            name = "catalogue_capability",
            joinColumns = {
                @JoinColumn(name = "kind", referencedColumnName = "kind"),
                @JoinColumn(name = "id", referencedColumnName = "id")
            })
    private Set<StoredCapability> capabilities = new HashSet<>();

    @Transient
    private boolean stored;

    /** For the persistence provider, which fills the fields. */
    @SuppressWarnings("NullAway.Init")
    protected StoredItem() {}

    @SuppressWarnings("NullAway.Init")
    StoredItem(ItemKey key) {
        this.key = key;
    }

    /** Takes over everything from a document. */
    StoredItem become(GearDocuments.Document written, long atRevision) {
        Gear gear = written.gear();
        PriceRange price = gear.price();
        revision = atRevision;
        name = gear.name();
        document = written.json();
        priceLeast = price == null ? null : price.least().amount();
        priceGreatest = price == null ? null : price.greatest().amount();
        currency = price == null ? null : price.least().currency();
        Set<StoredCapability> wanted = new HashSet<>();
        gear.capabilities().forEach(capability -> wanted.add(StoredCapability.of(capability)));
        if (!wanted.equals(capabilities)) {
            capabilities.clear();
            capabilities.addAll(wanted);
        }
        return this;
    }

    @Override
    public ItemKey getId() {
        return key;
    }

    /** The provider would otherwise ask the database before each of ten thousand inserts. */
    @Override
    public boolean isNew() {
        return !stored;
    }

    @PostLoad
    @PostPersist
    void markStored() {
        stored = true;
    }

    long revision() {
        return revision;
    }

    String document() {
        return document;
    }

    /** A row of what the item can be found by; rates in Hz, rounded to six decimals. */
    @Embeddable
    record StoredCapability(
            @Column(name = "connector") String connector,

            @Enumerated(EnumType.STRING) @Column(name = "format") @Nullable
            Format format,

            @Column(name = "line_rate_least") @Nullable BigDecimal lineRateLeast,
            @Column(name = "line_rate_greatest") @Nullable BigDecimal lineRateGreatest) {

        static StoredCapability of(Capability capability) {
            FrequencyRange rates = capability.lineRate();
            return new StoredCapability(
                    capability.connector(),
                    capability.format(),
                    rates == null ? null : inHertz(rates.min()),
                    rates == null ? null : inHertz(rates.max()));
        }

        private static BigDecimal inHertz(Frequency rate) {
            return BigDecimal.valueOf(rate.hz().toDouble()).setScale(6, RoundingMode.HALF_EVEN);
        }
    }
}
