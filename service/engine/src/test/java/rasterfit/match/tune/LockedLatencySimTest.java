package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.sim.LineBufferSim;
import rasterfit.sim.LineBufferSim.Bob;
import rasterfit.sim.LineBufferSim.BobOutcome;
import rasterfit.sim.LineBufferSim.Latencies;
import rasterfit.sim.LineBufferSim.Locked;
import rasterfit.sim.LineBufferSim.Outcome;
import rasterfit.sim.LineBufferSim.RowLatency;
import rasterfit.sim.Scan;

/**
 * The closed form of locked outputs against the event-by-event simulation ({@link LineBufferSim}), exact to the last
 * digit, on random rasters: crops, broken line counts, up and down, 1 to 6 taps, both kinds of scan.
 *
 * <p>Of an interlaced source the engine tells the later of both fields. Where a reduced picture shows a line nowhere, the
 * engine tells the first row below it, the simulation the last above it; the engine's choice is then looked up among the
 * simulated rows.
 */
class LockedLatencySimTest {
    private static final int[] TAPS = {1, 2, 4, 6};

    /** What the simulation gives, joined over the fields. */
    private record Judged(BigFraction offset, List<Latencies> fields, int peakLines) {
        BigFraction least() {
            return fields.stream()
                    .map(Latencies::least)
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
        }

        BigFraction greatest() {
            return fields.stream()
                    .map(Latencies::greatest)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
        }

        BigFraction mean() {
            BigFraction sum = fields.stream().map(Latencies::mean).reduce(BigFraction.ZERO, BigFraction::add);
            return sum.divide(fields.size());
        }

        /** The latest of all fields, each at the first row that shows the line or one below it. */
        BigFraction of(int line) {
            return fields.stream()
                    .map(field -> of(line, field.rows()))
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
        }

        private static BigFraction of(int line, List<RowLatency> rows) {
            return rows.stream()
                    .filter(row -> row.ownLine() >= line)
                    .findFirst()
                    .orElse(rows.get(rows.size() - 1))
                    .latency();
        }

        boolean shows(int line) {
            return fields.stream().allMatch(field -> field.rows().stream().anyMatch(row -> row.ownLine() == line));
        }
    }

    private static Judged simulated(LockedLatency in) {
        BigFraction sourceLines = BigFraction.of(in.halfLines(), 2);
        if (in.interlaced()) {
            BobOutcome bob = LineBufferSim.bob(new Bob(
                    sourceLines,
                    in.firstLine(),
                    in.lines(),
                    in.outputLines(),
                    in.firstRow(),
                    in.rows(),
                    in.taps(),
                    Scan.BOB_TOP_EDGE));
            return new Judged(bob.offset(), List.of(bob.topField(), bob.bottomField()), bob.peakLines());
        }
        Outcome outcome = LineBufferSim.locked(new Locked(
                sourceLines, in.firstLine(), in.lines(), in.outputLines(), in.firstRow(), in.rows(), in.taps()));
        return new Judged(outcome.offset(), List.of(outcome.latencies()), outcome.peakLines());
    }

    /** From a crop of one line to all lines that the field has, from reduction to enlargement many times over. */
    private static LockedLatency random(Random random, boolean interlaced) {
        int halfLines = 20 + random.nextInt(180);
        int room = (halfLines - (interlaced ? 1 : 0)) / 2;
        int lines = 1 + random.nextInt(room);
        int firstLine = random.nextInt(room - lines + 1);
        int outputLines = 8 + random.nextInt(220);
        int rows = 1 + random.nextInt(outputLines);
        int firstRow = random.nextInt(outputLines - rows + 1);
        return new LockedLatency(
                halfLines,
                firstLine,
                lines,
                interlaced,
                outputLines,
                firstRow,
                rows,
                TAPS[random.nextInt(TAPS.length)]);
    }

    /** Broadcast rasters into common output rasters, whole and cropped. */
    private static List<LockedLatency> broadcast() {
        int[][] outputs = {{525, 36, 480}, {750, 25, 720}, {1125, 41, 1080}, {1125, 161, 960}, {1481, 0, 1440}};
        int[][] sources = {{524, 18, 240}, {524, 30, 216}, {624, 24, 288}, {525, 22, 240}, {625, 24, 288}};
        List<LockedLatency> all = new ArrayList<>();
        for (int[] output : outputs) {
            for (int[] source : sources) {
                for (int taps : TAPS) {
                    all.add(new LockedLatency(
                            source[0],
                            source[1],
                            source[2],
                            source[0] % 2 != 0,
                            output[0],
                            output[1],
                            output[2],
                            taps));
                }
            }
        }
        return all;
    }

    private static void assertAgree(LockedLatency in, Judged judged) {
        LockedLatency.Result result = in.measure();
        assertThat(fraction(result.offset())).as("D of %s", in).isEqualTo(judged.offset());
        assertThat(fraction(result.least())).as("least of %s", in).isEqualTo(judged.least());
        assertThat(fraction(result.greatest())).as("greatest of %s", in).isEqualTo(judged.greatest());
        assertThat(fraction(in.mean(result))).as("mean of %s", in).isEqualTo(judged.mean());
        assertThat(fraction(result.top())).as("top of %s", in).isEqualTo(judged.of(0));
        assertThat(fraction(result.middle())).as("middle of %s", in).isEqualTo(judged.of(in.lines() / 2));
        assertThat(fraction(result.bottom())).as("bottom of %s", in).isEqualTo(judged.of(in.lines() - 1));
        if (!in.interlaced() && judged.shows(in.lines() / 2)) {
            assertThat(fraction(result.middle()))
                    .as("middle line of %s", in)
                    .isEqualTo(judged.fields().get(0).middleLine());
        }
        assertCapacity(in, result, judged);
    }

    /**
     * With k = 1 a line is held from its beginning until its last row has left, at most H = greatest latency + T/Lo. One
     * line begins per T/L, so no more than ⌈H·L/T⌉ are ever held: the capacity suffices. It is all used if ⌈H·L/T⌉ − 1
     * more lines follow the one that is held longest, for they have all begun by then and none leaves earlier.
     *
     * <p>With k taps the last row that needs line i shows line i + k/2 or the one before. The definition counts k/2 − 1
     * lines behind, so it can fall short by one line, never by more.
     */
    private static void assertCapacity(LockedLatency in, LockedLatency.Result result, Judged judged) {
        if (in.taps() > 1) {
            assertThat(judged.peakLines()).as("lines held, %s", in).isLessThanOrEqualTo(result.capacity() + 1);
            return;
        }
        assertThat(judged.peakLines()).as("lines held, %s", in).isLessThanOrEqualTo(result.capacity());
        if (in.rows() >= in.lines() && enoughLinesFollow(in, result, judged)) {
            assertThat(judged.peakLines()).as("lines held, %s", in).isEqualTo(result.capacity());
        }
    }

    private static boolean enoughLinesFollow(LockedLatency in, LockedLatency.Result result, Judged judged) {
        return judged.fields().stream()
                .flatMap(field -> field.rows().stream())
                .anyMatch(row ->
                        row.latency().equals(judged.greatest()) && in.lines() - row.ownLine() >= result.capacity());
    }

    @Test
    void progressiveSourcesAgreeWithTheSimulation() {
        Random random = new Random(20_240_601);
        int tight = 0;
        for (int i = 0; i < 3000; i++) {
            LockedLatency in = random(random, false);
            Judged judged = simulated(in);
            assertAgree(in, judged);
            tight += in.taps() == 1 && judged.peakLines() == in.measure().capacity() ? 1 : 0;
        }
        assertThat(tight).as("cases with k = 1 whose capacity is used up").isGreaterThan(150);
    }

    @Test
    void interlacedSourcesAgreeWithTheSimulation() {
        Random random = new Random(20_240_602);
        for (int i = 0; i < 1500; i++) {
            LockedLatency in = random(random, true);
            assertAgree(in, simulated(in));
        }
    }

    @Test
    void broadcastRastersAgreeWithTheSimulation() {
        for (LockedLatency in : broadcast()) {
            assertAgree(in, simulated(in));
        }
    }

    @Test
    void theCapacityOfTheWorkedCaseWithOneTapIsUsedUp() {
        // 262 lines, all 240 onto 1080 rows of 1125: 14 lines are needed, and all 14 are held at some moment.
        LockedLatency in = new LockedLatency(524, 18, 240, false, 1125, 41, 1080, 1);

        assertThat(simulated(in).peakLines()).isEqualTo(14);
        assertThat(in.measure().capacity()).isEqualTo(14);
    }
}
