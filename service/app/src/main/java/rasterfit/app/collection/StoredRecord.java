package rasterfit.app.collection;

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
import java.io.Serializable;
import java.util.HashSet;
import java.util.Set;
import org.springframework.data.domain.Persistable;

/** One record of a collection. */
@Entity
@Table(name = "collection_record")
class StoredRecord implements Persistable<StoredRecord.RecordKey> {
    @EmbeddedId
    private RecordKey key;

    @Column(name = "revision")
    private long revision;

    @Column(name = "document")
    private String document;

    /** Of a connection: the database holds each for one connection only, whatever the writers believe. */
    @ElementCollection
    @CollectionTable(
            name = "collection_port",
            joinColumns = {
                @JoinColumn(name = "owner", referencedColumnName = "owner"),
                @JoinColumn(name = "collection", referencedColumnName = "collection"),
                @JoinColumn(name = "section", referencedColumnName = "section"),
                @JoinColumn(name = "connection", referencedColumnName = "id")
            })
    private Set<PortUse> ports = new HashSet<>();

    @Transient
    private boolean stored;

    /** For the persistence provider, which fills the fields. */
    @SuppressWarnings("NullAway.Init")
    protected StoredRecord() {}

    @SuppressWarnings("NullAway.Init")
    StoredRecord(RecordKey key) {
        this.key = key;
    }

    @Embeddable
    record RecordKey(
            @Column(name = "owner") String owner,
            @Column(name = "collection") String collection,

            @Enumerated(EnumType.STRING) @Column(name = "section")
            Section section,

            @Column(name = "id") String id)
            implements Serializable {}

    @Override
    public RecordKey getId() {
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

    StoredRecord become(String written, Set<PortUse> used, long atRevision) {
        document = written;
        revision = atRevision;
        if (!ports.equals(used)) {
            ports.clear();
            ports.addAll(used);
        }
        return this;
    }

    Set<PortUse> ports() {
        return Set.copyOf(ports);
    }

    long revision() {
        return revision;
    }

    String document() {
        return document;
    }
}
