package rasterfit.edid.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rasterfit.edid.oracle.Facts.Difference;

/** Counts what agrees and what differs between {@code EdidReader} and {@code edid-decode} in many EDIDs. */
final class Comparison {
    private final Map<KnownDifference, Integer> known = new EnumMap<>(KnownDifference.class);
    private final List<String> unexplained = new ArrayList<>();
    private int edids;
    private int numbers;

    /** @param printed by the tool for the same bytes */
    void add(String name, byte[] edid, List<String> printed) {
        Facts ours = OurFacts.of(edid);
        Facts theirs = TheirFacts.of(printed);
        edids++;
        numbers += theirs.size();
        for (Difference difference : ours.differencesFrom(theirs)) {
            Optional<KnownDifference> reason = KnownDifference.of(difference, new Case(edid, ours, theirs));
            reason.ifPresentOrElse(
                    found -> known.merge(found, 1, Integer::sum), () -> unexplained.add(name + ": " + difference));
        }
    }

    /** What is looked at to tell whether a difference is a known one. */
    record Case(byte[] edid, Facts ours, Facts theirs) {
        /** Ours less theirs, 0 where one of them does not give the number. */
        int surplus(String name) {
            return ours.get(name) instanceof Integer mine && theirs.get(name) instanceof Integer other ? mine - other : 0;
        }

        /** Whether any value differs whose name begins so. */
        boolean differ(String prefix) {
            return ours.differencesFrom(theirs).stream()
                    .anyMatch(difference -> difference.name().startsWith(prefix));
        }

        /** Of EDID 1. */
        int revision() {
            return edid[0x13];
        }
    }

    int edids() {
        return edids;
    }

    int numbers() {
        return numbers;
    }

    Map<KnownDifference, Integer> known() {
        return known;
    }

    void assertNothingUnexplained() {
        assertThat(unexplained).as("differences without a known reason").isEmpty();
    }
}
