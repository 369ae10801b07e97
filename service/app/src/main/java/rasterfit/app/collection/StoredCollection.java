package rasterfit.app.collection;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.PostLoad;
import jakarta.persistence.PostPersist;
import jakarta.persistence.Table;
import jakarta.persistence.Transient;
import java.io.Serializable;
import org.springframework.data.domain.Persistable;

/** A collection; whoever holds the lock of its row may write to it. */
@Entity
@Table(name = "collection")
class StoredCollection implements Persistable<StoredCollection.CollectionKey> {
    @EmbeddedId
    private CollectionKey key;

    /** Of the newest change to anything in it. */
    @Column(name = "revision")
    private long revision;

    /** Of the newest change to its own document. */
    @Column(name = "changed_in")
    private long changedIn;

    @Column(name = "document")
    private String document;

    @Transient
    private boolean stored;

    /** For the persistence provider, which fills the fields. */
    @SuppressWarnings("NullAway.Init")
    protected StoredCollection() {}

    StoredCollection(CollectionKey key, String document, long revision) {
        this.key = key;
        this.document = document;
        this.revision = revision;
        this.changedIn = revision;
    }

    /** @param owner others cannot find it */
    @Embeddable
    record CollectionKey(
            @Column(name = "owner") String owner,
            @Column(name = "id") String id) implements Serializable {}

    @Override
    public CollectionKey getId() {
        return key;
    }

    @Override
    public boolean isNew() {
        return !stored;
    }

    @PostLoad
    @PostPersist
    void markStored() {
        stored = true;
    }

    void become(String changed, long atRevision) {
        document = changed;
        changedIn = atRevision;
        revision = atRevision;
    }

    /** Something in it changed. */
    void move(long atRevision) {
        revision = atRevision;
    }

    long revision() {
        return revision;
    }

    long changedIn() {
        return changedIn;
    }

    String document() {
        return document;
    }
}
