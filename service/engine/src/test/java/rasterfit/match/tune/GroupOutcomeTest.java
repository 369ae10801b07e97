package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Modes;

/**
 * What is kept of all settings of a group against its definition: per grade and raster the best few by score, the earlier of
 * equals first, and the values of picture and latency that no other setting of that grade and raster reaches or exceeds in
 * both. Values on a coarse grid, so that equals abound.
 */
class GroupOutcomeTest {
    private record Kind(AcceptanceGrade grade, String raster) {}

    private record Point(double picture, double latency) {}

    /** Nothing of a candidate but its figures is looked at. */
    private static Candidate candidate(Random random, int number) {
        return new Candidate(
                null,
                number,
                0,
                0,
                0,
                0,
                random.nextInt(6) / 5.0,
                random.nextInt(5) / 4.0,
                random.nextInt(5) / 4.0,
                random.nextBoolean() ? AcceptanceGrade.LISTED : AcceptanceGrade.NEAR_LISTED,
                random.nextBoolean() ? "480" : "1080");
    }

    private static Map<Kind, List<Candidate>> byKind(List<Candidate> all, boolean rastersMatter) {
        return all.stream()
                .collect(Collectors.groupingBy(
                        each -> new Kind(each.grade(), rastersMatter ? each.rasterKey() : ""),
                        LinkedHashMap::new,
                        Collectors.toList()));
    }

    private static Set<Point> front(List<Candidate> all) {
        return all.stream()
                .filter(each -> all.stream()
                        .noneMatch(other -> other.picture() >= each.picture()
                                && other.latency() >= each.latency()
                                && (other.picture() > each.picture() || other.latency() > each.latency())))
                .map(each -> new Point(each.picture(), each.latency()))
                .collect(Collectors.toSet());
    }

    @Test
    void theBestFewAndTheFrontOfEachGradeAndRasterAreKept() {
        Random random = new Random(20_251_125);
        for (int round = 0; round < 2000; round++) {
            int keep = 1 + random.nextInt(3);
            boolean rastersMatter = random.nextBoolean();
            GroupOutcome outcome = new GroupOutcome(List.of(Modes.half525()), keep, rastersMatter);
            List<Candidate> all = new ArrayList<>();
            int count = 1 + random.nextInt(12);
            for (int number = 0; number < count; number++) {
                Candidate next = candidate(random, number);
                all.add(next);
                // As the hot loop does it.
                if (outcome.matters(next.grade(), next.rasterKey(), next.partial(), next.picture(), next.latency())) {
                    outcome.add(next);
                }
            }
            Map<Kind, List<Candidate>> kinds = byKind(all, rastersMatter);
            Map<Kind, List<Candidate>> best = byKind(outcome.best(), rastersMatter);
            Map<Kind, List<Candidate>> front = byKind(outcome.front(), rastersMatter);
            assertThat(best.keySet()).isEqualTo(kinds.keySet());
            assertThat(front.keySet()).isEqualTo(kinds.keySet());
            kinds.forEach((kind, candidates) -> {
                assertThat(best.get(kind))
                        .containsExactlyElementsOf(candidates.stream()
                                .sorted(Comparator.comparingDouble(Candidate::partial)
                                        .reversed())
                                .limit(keep)
                                .toList());
                // Each value once.
                assertThat(front.get(kind))
                        .extracting(each -> new Point(each.picture(), each.latency()))
                        .containsExactlyInAnyOrderElementsOf(front(candidates));
            });
        }
    }

    @Test
    void whatWouldChangeNothingDoesNotMatter() {
        GroupOutcome outcome = new GroupOutcome(List.of(Modes.half525()), 1, false);
        assertThat(outcome.best()).isEmpty();
        assertThat(outcome.matters(AcceptanceGrade.LISTED, "", 0, 0, 0)).isTrue();
        outcome.add(new Candidate(null, 0, 0, 0, 0, 0, 0.5, 0.5, 0.5, AcceptanceGrade.LISTED, ""));

        assertThat(outcome.best()).hasSize(1);
        assertThat(outcome.modes()).containsExactly(Modes.half525());
        // No better score, and on neither axis anything that is not there yet.
        assertThat(outcome.matters(AcceptanceGrade.LISTED, "", 0.5, 0.5, 0.5)).isFalse();
        assertThat(outcome.matters(AcceptanceGrade.LISTED, "", 0.6, 0.5, 0.5)).isTrue();
        assertThat(outcome.matters(AcceptanceGrade.LISTED, "", 0.4, 0.6, 0)).isTrue();
        assertThat(outcome.matters(AcceptanceGrade.LISTED, "", 0.4, 0, 0.6)).isTrue();
        assertThat(outcome.matters(AcceptanceGrade.NEAR_LISTED, "", 0, 0, 0)).isTrue();
        assertThat(outcome.matters(AcceptanceGrade.LISTED, "another", 0.5, 0.5, 0.5))
                .isFalse();
    }
}
