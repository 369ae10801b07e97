package rasterfit.app.collection;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A part of a collection, with the type of body that its records have. */
enum Section {
    ITEMS("items", "item", OwnItemBody.class, "missingFromCatalogue"),
    CONNECTIONS("connections", "connection", ConnectionBody.class),
    LAG_READINGS("lag-readings", "lag reading", LagReadingBody.class, "statistics"),
    TEST_RESULTS("test-results", "test result", TestResultBody.class),
    SERVICE_NOTES("service-notes", "service note", ServiceNoteBody.class),
    DUE("due", "due item", DueBody.class, "nextOn", "overdue", "cautions");

    private final String path;
    private final String noun;
    private final Class<? extends Record> bodyType;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say.
    private final List<String> addedMembers;

    Section(String path, String noun, Class<? extends Record> bodyType, String... addedMembers) {
        this.path = path;
        this.noun = noun;
        this.bodyType = bodyType;
        this.addedMembers = List.of(addedMembers);
    }

    static Optional<Section> ofPath(String path) {
        return Arrays.stream(values())
                .filter(section -> section.path.equals(path))
                .findFirst();
    }

    String path() {
        return path;
    }

    /** What one record is called in a sentence. */
    String noun() {
        return noun;
    }

    Class<? extends Record> bodyType() {
        return bodyType;
    }

    /** Sections whose records this one's may name. */
    Set<Section> named() {
        return switch (this) {
            case ITEMS -> EnumSet.noneOf(Section.class);
            case SERVICE_NOTES -> EnumSet.of(ITEMS, DUE);
            case CONNECTIONS, LAG_READINGS, TEST_RESULTS, DUE -> EnumSet.of(ITEMS);
        };
    }

    /** Sections whose records may name one of this. */
    Set<Section> naming() {
        return Arrays.stream(values())
                .filter(other -> other.named().contains(this))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Section.class)));
    }

    /** What answers add to a record, and what is ignored when it comes back. */
    List<String> addedMembers() {
        return addedMembers;
    }
}
