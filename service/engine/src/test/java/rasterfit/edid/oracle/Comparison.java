package rasterfit.edid.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToIntFunction;
import rasterfit.edid.oracle.Facts.Difference;

/** Counts what agrees and what differs between {@code EdidReader} and {@code edid-decode} in many EDIDs. */
final class Comparison {
    private final Map<KnownDifference, Integer> known = new EnumMap<>(KnownDifference.class);
    private final List<String> unexplained = new ArrayList<>();
    private int edids;
    private int undecoded;
    private int numbers;

    /** @param printed by the tool for the same bytes, nothing if it broke down */
    void add(String name, byte[] edid, List<String> printed) {
        if (printed.isEmpty()) {
            undecoded++;
            return;
        }
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

    int edids() {
        return edids;
    }

    /** EDIDs over which the tool broke down. */
    int undecoded() {
        return undecoded;
    }

    int numbers() {
        return numbers;
    }

    void assertNothingUnexplained() {
        assertThat(unexplained).as("differences without a known reason").isEmpty();
    }

    /** Neither more nor less: a number that has fallen is written down, so that it cannot rise again unseen. */
    void assertKnown(ToIntFunction<KnownDifference> expected) {
        Map<KnownDifference, Integer> listed = new EnumMap<>(KnownDifference.class);
        for (KnownDifference reason : KnownDifference.values()) {
            if (expected.applyAsInt(reason) > 0) {
                listed.put(reason, expected.applyAsInt(reason));
            }
        }
        assertThat(known).as("values that differ, by known reason").isEqualTo(listed);
    }

    @Override
    public String toString() {
        return edids + " EDIDs with " + numbers + " values compared, " + undecoded
                + " more over which the tool broke down; differing for known reasons: " + known;
    }
}
