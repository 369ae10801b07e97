package rasterfit.app.collection;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;

/** Everything that stands in a collection, by id. */
record Contents(
        Map<String, OwnItem> items,
        Map<String, ConnectionBody> connections,
        Map<String, LagReadingBody> readings,
        Map<String, TestResultBody> tests,
        Map<String, ServiceNoteBody> notes,
        Map<String, DueBody> due) {

    /** A record, and how a sentence names it. */
    record RecordName(Section section, String id) {
        @Override
        public String toString() {
            return section.noun() + " \"" + id + "\"";
        }
    }

    static Contents empty() {
        return new Contents(
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>());
    }

    /** The records that name another, whether or not the catalogue still holds what it is. */
    Stream<RecordName> users(Section section, String id) {
        return switch (section) {
            case ITEMS ->
                Stream.of(
                                users(Section.CONNECTIONS, connections, id),
                                users(Section.LAG_READINGS, readings, id),
                                users(Section.TEST_RESULTS, tests, id),
                                users(Section.SERVICE_NOTES, notes, id),
                                users(Section.DUE, due, id))
                        .flatMap(users -> users);
            case DUE ->
                notes.entrySet().stream()
                        .filter(note -> id.equals(note.getValue().done()))
                        .map(note -> new RecordName(Section.SERVICE_NOTES, note.getKey()));
            case CONNECTIONS, LAG_READINGS, TEST_RESULTS, SERVICE_NOTES -> Stream.empty();
        };
    }

    private static Stream<RecordName> users(Section section, Map<String, ? extends NamesItems> records, String item) {
        return records.entrySet().stream()
                .filter(record -> record.getValue().namedItems().contains(item))
                .map(record -> new RecordName(section, record.getKey()));
    }
}
