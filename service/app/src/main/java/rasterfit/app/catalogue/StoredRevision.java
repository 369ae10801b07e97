package rasterfit.app.catalogue;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;

/** One state that an item had; without a document, that it was deleted. Written once and never changed. */
@Entity
@Table(name = "catalogue_revision")
class StoredRevision implements Persistable<StoredRevision.RevisionKey> {
    @EmbeddedId
    private RevisionKey key;

    @Column(name = "document")
    private @Nullable String document;

    @Enumerated(EnumType.STRING)
    @Column(name = "change")
    private Change change;

    @Column(name = "changed_at")
    private Instant changedAt;

    @Column(name = "changed_by")
    private String changedBy;

    @SuppressWarnings("NullAway.Init")
    protected StoredRevision() {}

    StoredRevision(RevisionKey key, @Nullable String document, Change change, Instant changedAt, String changedBy) {
        this.key = key;
        this.document = document;
        this.change = change;
        this.changedAt = changedAt;
        this.changedBy = changedBy;
    }

    @Embeddable
    record RevisionKey(
            @Enumerated(EnumType.STRING) @Column(name = "kind")
            Kind kind,

            @Column(name = "id") String id,
            @Column(name = "revision") long revision)
            implements Serializable {}

    @Override
    public RevisionKey getId() {
        return key;
    }

    /** Revisions are only ever added. */
    @Override
    public boolean isNew() {
        return true;
    }

    long revision() {
        return key.revision();
    }

    ItemKey item() {
        return new ItemKey(key.kind(), key.id());
    }

    @Nullable
    String document() {
        return document;
    }

    Change change() {
        return change;
    }

    Instant changedAt() {
        return changedAt;
    }

    String changedBy() {
        return changedBy;
    }
}
