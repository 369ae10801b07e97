package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;

/** What the numbers of one body rest on: the longest path that leads to a member wins, the first of equals. */
record Provenance(List<Entry> entries) {
    private static final int MOST_ENTRIES = 1000;
    private static final int LONGEST_PATH = 500;

    record Entry(
            List<String> path,
            Basis basis,
            @Nullable String source,
            @Nullable String note) {}

    static Provenance read(Place at, @Nullable List<ProvenanceBody> bodies) {
        return new Provenance(at.each(bodies, 0, MOST_ENTRIES, Provenance::entry));
    }

    private static Entry entry(Place at, ProvenanceBody body) {
        if (body.of().length() > LONGEST_PATH) {
            at.member("of").outOfRange("A path has up to " + LONGEST_PATH + " characters.", "0.." + LONGEST_PATH);
        }
        if (body.basis() == Basis.COMPUTED) {
            at.member("basis").unknownValue("Only answers are computed; use MEASURED, PUBLISHED, DECLARED or ASSUMED.");
        }
        at.member("source").optionalText(body.source());
        at.member("note").optionalNote(body.note());
        return entry(body);
    }

    private static Entry entry(ProvenanceBody body) {
        return new Entry(steps(body.of()), body.basis(), body.source(), body.note());
    }

    /** What was found sound when it was read before. */
    static Provenance ofStored(List<ProvenanceBody> bodies) {
        return new Provenance(bodies.stream().map(Provenance::entry).toList());
    }

    /** The steps of a written path. */
    static List<String> steps(String of) {
        return of.isEmpty() ? List.of() : Arrays.asList(of.split("/", -1));
    }

    /** @param path member names and element ids from the body to the member */
    Basis of(List<String> path, Basis otherwise) {
        return find(path).map(Entry::basis).orElse(otherwise);
    }

    /** The entry that holds for a member, if any does. */
    Optional<Entry> find(List<String> path) {
        Entry found = null;
        for (Entry entry : entries) {
            int length = entry.path().size();
            boolean isLonger = found == null || length > found.path().size();
            if (isLonger && length <= path.size() && path.subList(0, length).equals(entry.path())) {
                found = entry;
            }
        }
        return Optional.ofNullable(found);
    }

    static List<String> path(List<String> outer, String... inner) {
        List<String> path = new ArrayList<>(outer);
        path.addAll(Arrays.asList(inner));
        return path;
    }
}
