package rasterfit.app.catalogue;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.io.Serializable;

/** Which item. */
@Embeddable
public record ItemKey(
        @Enumerated(EnumType.STRING) @Column(name = "kind") Kind kind,
        @Column(name = "id") String id) implements Serializable {}
