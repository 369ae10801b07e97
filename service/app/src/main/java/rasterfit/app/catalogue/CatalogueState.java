package rasterfit.app.catalogue;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

/** The number of the newest change. Whoever holds the lock of its row may write. */
@Entity
@Table(name = "catalogue_state")
class CatalogueState {
    @Id
    @Column(name = "single")
    private boolean single = true;

    @Column(name = "revision")
    private long revision;

    protected CatalogueState() {}

    long revision() {
        return revision;
    }

    long next() {
        revision++;
        return revision;
    }
}
