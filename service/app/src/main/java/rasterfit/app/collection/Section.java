package rasterfit.app.collection;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

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

    /** What answers add to a record, and what is ignored when it comes back. */
    List<String> addedMembers() {
        return addedMembers;
    }
}
