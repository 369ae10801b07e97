package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;

/** What the numbers of one body rest on: the longest path that leads to a member wins, the first of equals. */
record Provenance(List<Entry> entries) {
    private static final int MOST_ENTRIES = 1000;
    private static final int LONGEST_PATH = 500;

    record Entry(List<String> path, Basis basis) {}

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
        List<String> path =
                body.of().isEmpty() ? List.of() : Arrays.asList(body.of().split("/", -1));
        return new Entry(path, body.basis());
    }

    /** @param path member names and element ids from the body to the member */
    Basis of(List<String> path, Basis otherwise) {
        int longest = -1;
        Basis basis = otherwise;
        for (Entry entry : entries) {
            int length = entry.path().size();
            if (length > longest
                    && length <= path.size()
                    && path.subList(0, length).equals(entry.path())) {
                longest = length;
                basis = entry.basis();
            }
        }
        return basis;
    }

    static List<String> path(List<String> outer, String... inner) {
        List<String> path = new ArrayList<>(outer);
        path.addAll(Arrays.asList(inner));
        return path;
    }
}
