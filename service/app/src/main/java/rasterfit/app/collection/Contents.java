package rasterfit.app.collection;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Everything that stands in a collection, by id.
 *
 * @param ports which ports and cables each connection holds
 */
record Contents(
        Map<String, OwnItem> items,
        Map<String, ConnectionBody> connections,
        Map<String, Set<PortUse>> ports,
        Map<String, LagReadingBody> readings,
        Map<String, TestResultBody> tests,
        Map<String, ServiceNoteBody> notes,
        Map<String, DueBody> due) {

    static Contents empty() {
        return new Contents(
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>(),
                new LinkedHashMap<>());
    }

    /** Which other connection holds one of the ports. */
    Optional<Map.Entry<String, PortUse>> holder(String connection, Set<PortUse> wanted) {
        return ports.entrySet().stream()
                .filter(held -> !held.getKey().equals(connection))
                .flatMap(held ->
                        held.getValue().stream().filter(wanted::contains).map(port -> Map.entry(held.getKey(), port)))
                .findFirst();
    }

    /** What names an item, as {@code connection "a"}. */
    List<String> users(String item) {
        Set<String> users = new TreeSet<>();
        ports.forEach((id, held) -> {
            if (held.stream().anyMatch(port -> port.item().equals(item))) {
                users.add(Section.CONNECTIONS.noun() + " \"" + id + "\"");
            }
        });
        readings.forEach(
                (id, body) -> add(users, Section.LAG_READINGS, id, body.item().equals(item)));
        tests.forEach(
                (id, body) -> add(users, Section.TEST_RESULTS, id, body.item().equals(item)));
        notes.forEach(
                (id, body) -> add(users, Section.SERVICE_NOTES, id, body.item().equals(item)));
        due.forEach((id, body) -> add(users, Section.DUE, id, body.item().equals(item)));
        return List.copyOf(users);
    }

    private static void add(Set<String> users, Section section, String id, boolean names) {
        if (names) {
            users.add(section.noun() + " \"" + id + "\"");
        }
    }
}
