package rasterfit.sim;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * Simulation of a converter whose output runs on a clock of its own, over a long run of output frames, with the source
 * fields coming at their own pace. Times are exact, in seconds. Two ways of storing are simulated: whole fields, of
 * which an output frame takes the newest complete one, and a single store that is read while it is being written.
 */
public final class FreeRunSim {
    private FreeRunSim() {}

    /**
     * What runs.
     *
     * @param fieldPeriod seconds from one source field to the next
     * @param sourceLines lines in one field period, blanking included; may be broken, such as 525/2
     * @param firstLine lines between the start of a field and the first line kept
     * @param lines lines kept of each field
     * @param scan progressive, or interlaced fields (field 0 is a top field) each shown as a picture of its own
     * @param framePeriod seconds from one output frame to the next
     * @param outputLines lines in one output frame, blanking included
     * @param firstRow output lines between the start of a frame and the first picture row
     * @param rows picture rows
     * @param pickRow output line at whose start a frame chooses its field: firstRow when it chooses as it begins to
     *     read, 0 when it chooses at the start of the frame. Without effect on a single store
     * @param firstFrameStart seconds from the start of field 0 to the start of output frame 0: the phase
     * @param frames output frames to observe; those before the first complete field are left out of the count
     */
    public record Setup(
            BigFraction fieldPeriod,
            BigFraction sourceLines,
            int firstLine,
            int lines,
            Scan scan,
            BigFraction framePeriod,
            int outputLines,
            int firstRow,
            int rows,
            int pickRow,
            BigFraction firstFrameStart,
            int frames) {
        public Setup {
            if (pickRow < 0 || pickRow > firstRow || firstRow + rows > outputLines || frames < 2) {
                throw new IllegalArgumentException("need 0 <= pickRow <= firstRow, rows in the frame, frames >= 2");
            }
            if (firstFrameStart.signum() < 0) {
                throw new IllegalArgumentException("the first output frame must not start before field 0");
            }
            BigFraction lastLineEnds = BigFraction.of(2 * (firstLine + lines) + (scan.interlaced() ? 1 : 0), 2);
            if (lastLineEnds.compareTo(sourceLines) > 0) {
                throw new IllegalArgumentException("the kept lines reach beyond the field period");
            }
        }
    }

    /** Latencies in seconds from a row's own line beginning to arrive to the row beginning to leave, over the run. */
    public record Spread(
            List<BigFraction> leastByRow,
            List<BigFraction> greatestByRow,
            BigFraction least,
            BigFraction mean,
            BigFraction greatest) {}

    /**
     * Result for stored whole fields.
     *
     * @param fresh as spread, without the first frame and those that showed the field of the frame before
     * @param dropped fields never shown, between the first and the last field shown
     * @param repeated frames that showed the field of the frame before
     * @param droppedPerSecond dropped fields by the time from the first to the last observed frame
     * @param repeatedPerSecond repeated frames by the same time
     */
    public record StoredOutcome(
            Spread spread,
            Spread fresh,
            long dropped,
            long repeated,
            BigFraction droppedPerSecond,
            BigFraction repeatedPerSecond) {}

    /**
     * A place where the picture changes from one field to another.
     *
     * @param frame output frame
     * @param row first row of the other field
     * @param fieldAbove field shown above the tear
     * @param fieldBelow field shown from the row on
     */
    public record Tear(long frame, int row, long fieldAbove, long fieldBelow) {
        long newerField() {
            return Math.max(fieldAbove, fieldBelow);
        }
    }

    /**
     * How the tear wanders from one frame to the next. Where reading and writing meet at a similar pace the picture may
     * change to and fro over some rows, since lines come whole and rows leave whole; the first of these rows counts. A
     * step is taken between neighbouring frames whose newer fields are neighbours too (so a tear that leaves at one edge
     * and another that enters at the other edge make no step), and only where the torn rows are clear of the picture's
     * edges by the widest such zone, so that no zone is measured that is half out of sight.
     *
     * @param widestZone rows from the first to the last change of the widest zone; 0 for a clean tear
     */
    public record Drift(int widestZone, int steps, int leastRows, int greatestRows, BigFraction meanRowsPerFrame) {}

    /**
     * Result for a single store.
     *
     * @param fresh as spread, without the first frame and rows that showed the same version of their line in the frame before
     * @param tears in order of time
     * @param drift of the tears (no steps: all nought)
     */
    public record SingleStoreOutcome(Spread spread, Spread fresh, List<Tear> tears, long framesWithTear, Drift drift) {}

    /** Whole fields are stored; every frame takes the newest field of which all kept lines have arrived. */
    public static StoredOutcome wholeFields(Setup in) {
        Clock clock = new Clock(in);
        int[][] own = {ownLines(in, false), in.scan.interlaced() ? ownLines(in, true) : ownLines(in, false)};
        Recorder recorder = new Recorder(clock, in.rows);
        Recorder fresh = new Recorder(clock, in.rows);
        long newest = -1;
        long shown = -1;
        long dropped = 0;
        long repeated = 0;
        for (long frame = 0; recorder.frames < in.frames; frame++) {
            long pick = clock.lineOfFrameStarts(frame, in.pickRow);
            while (clock.arrived(newest + 1, in.lines - 1) <= pick) {
                newest++;
            }
            if (newest < 0) {
                continue;
            }
            if (shown >= 0 && newest == shown) {
                repeated++;
            } else if (shown >= 0) {
                dropped += newest - shown - 1;
            }
            boolean isFresh = shown >= 0 && newest != shown;
            shown = newest;
            int[] lineOf = own[(int) (newest % 2)];
            for (int row = 0; row < in.rows; row++) {
                long leaves = clock.lineOfFrameStarts(frame, in.firstRow + row);
                long latency = leaves - clock.begins(newest, lineOf[row]);
                recorder.row(row, latency);
                if (isFresh) {
                    fresh.row(row, latency);
                }
            }
            recorder.frames++;
        }
        BigFraction seconds = in.framePeriod.multiply(in.frames - 1);
        return new StoredOutcome(
                recorder.spread(),
                fresh.spread(),
                dropped,
                repeated,
                BigFraction.of(dropped).divide(seconds),
                BigFraction.of(repeated).divide(seconds));
    }

    /**
     * One store with a place for each line: a row takes what is there, the newest wholly arrived version of its own
     * line. Progressive sources only: an interlaced pair of fields does not share its lines.
     */
    public static SingleStoreOutcome singleStore(Setup in) {
        if (in.scan.interlaced()) {
            throw new IllegalArgumentException("a single store is simulated for progressive sources only");
        }
        Clock clock = new Clock(in);
        int[] own = ownLines(in, false);
        Recorder recorder = new Recorder(clock, in.rows);
        Recorder fresh = new Recorder(clock, in.rows);
        List<Tear> tears = new ArrayList<>();
        long framesWithTear = 0;
        long[] inStore = new long[in.lines];
        Arrays.fill(inStore, -1);
        long[] shown = new long[in.rows];
        Arrays.fill(shown, -1);
        for (long frame = 0; recorder.frames < in.frames; frame++) {
            if (clock.lineOfFrameStarts(frame, in.firstRow) < clock.arrived(0, in.lines - 1)) {
                continue; // the store is not full yet
            }
            int tearsBefore = tears.size();
            long above = -1;
            for (int row = 0; row < in.rows; row++) {
                long leaves = clock.lineOfFrameStarts(frame, in.firstRow + row);
                int line = own[row];
                while (clock.arrived(inStore[line] + 1, line) <= leaves) {
                    inStore[line]++;
                }
                long latency = leaves - clock.begins(inStore[line], line);
                recorder.row(row, latency);
                if (shown[row] >= 0 && inStore[line] != shown[row]) {
                    fresh.row(row, latency);
                }
                shown[row] = inStore[line];
                if (row > 0 && inStore[line] != above) {
                    tears.add(new Tear(frame, row, above, inStore[line]));
                }
                above = inStore[line];
            }
            framesWithTear += tears.size() > tearsBefore ? 1 : 0;
            recorder.frames++;
        }
        return new SingleStoreOutcome(
                recorder.spread(), fresh.spread(), List.copyOf(tears), framesWithTear, drift(tears, in.rows));
    }

    private static int[] ownLines(Setup in, boolean bottomField) {
        return new LinePicker(in.lines, in.rows, 1, in.scan, bottomField).ownLines();
    }

    /** The rows between the first and the last tear at which one field meets the one before it in one frame. */
    private record Zone(long frame, long newerField, int first, int last) {
        boolean isClearOfEdges(int margin, int rows) {
            return first > margin && last < rows - margin;
        }

        boolean isFollowedBy(Zone next) {
            return next.frame == frame + 1 && next.newerField == newerField + 1;
        }
    }

    private static Drift drift(List<Tear> tears, int rows) {
        List<Zone> zones = zones(tears);
        int margin =
                zones.stream().mapToInt(zone -> zone.last - zone.first).max().orElse(0);
        int steps = 0;
        int least = Integer.MAX_VALUE;
        int greatest = Integer.MIN_VALUE;
        long sum = 0;
        for (int earlier = 0; earlier < zones.size(); earlier++) {
            for (int later = earlier + 1; later < zones.size(); later++) {
                Zone before = zones.get(earlier);
                Zone after = zones.get(later);
                if (after.frame > before.frame + 1) {
                    break;
                }
                if (before.isFollowedBy(after)
                        && before.isClearOfEdges(margin, rows)
                        && after.isClearOfEdges(margin, rows)) {
                    int step = after.first - before.first;
                    steps++;
                    least = Math.min(least, step);
                    greatest = Math.max(greatest, step);
                    sum += step;
                }
            }
        }
        return steps == 0
                ? new Drift(margin, 0, 0, 0, BigFraction.ZERO)
                : new Drift(margin, steps, least, greatest, BigFraction.of(sum, steps));
    }

    private static List<Zone> zones(List<Tear> tears) {
        List<Zone> zones = new ArrayList<>();
        for (Tear tear : tears) {
            Zone last = zones.isEmpty() ? null : zones.get(zones.size() - 1);
            if (last != null && last.frame == tear.frame && last.newerField == tear.newerField()) {
                zones.set(zones.size() - 1, new Zone(last.frame, last.newerField, last.first, tear.row));
            } else {
                zones.add(new Zone(tear.frame, tear.newerField(), tear.row, tear.row));
            }
        }
        return zones;
    }

    /** Whole ticks in which fields, half lines, frames, rows and the phase can all be counted. */
    private static final class Clock {
        private final BigInteger ticksPerSecond;
        private final long field;
        private final long halfLine;
        private final long frame;
        private final long row;
        private final long firstFrame;
        private final int firstLine;
        private final boolean interlaced;

        Clock(Setup in) {
            BigFraction halfLineSeconds = in.fieldPeriod.divide(in.sourceLines).divide(2);
            BigFraction rowSeconds = in.framePeriod.divide(in.outputLines);
            BigInteger ticks = BigInteger.ONE;
            for (BigFraction time : List.of(in.fieldPeriod, halfLineSeconds, rowSeconds, in.firstFrameStart)) {
                ticks = ticks.multiply(time.getDenominator()).divide(ticks.gcd(time.getDenominator()));
            }
            ticksPerSecond = ticks;
            field = inTicks(in.fieldPeriod);
            halfLine = inTicks(halfLineSeconds);
            frame = inTicks(in.framePeriod);
            row = inTicks(rowSeconds);
            firstFrame = inTicks(in.firstFrameStart);
            firstLine = in.firstLine;
            interlaced = in.scan.interlaced();
        }

        private long inTicks(BigFraction seconds) {
            BigFraction ticks = seconds.multiply(ticksPerSecond);
            if (!ticks.getDenominator().equals(BigInteger.ONE)) {
                throw new IllegalStateException("not a whole number of ticks: " + seconds);
            }
            return ticks.getNumerator().longValueExact();
        }

        /** Time at which a kept line of a field begins to arrive; odd fields are bottom fields, half a line later. */
        long begins(long fieldNumber, int line) {
            long halfLines = 2L * (firstLine + line) + (interlaced && fieldNumber % 2 != 0 ? 1 : 0);
            return Math.addExact(Math.multiplyExact(fieldNumber, field), Math.multiplyExact(halfLines, halfLine));
        }

        long arrived(long fieldNumber, int line) {
            return begins(fieldNumber, line) + 2 * halfLine;
        }

        long lineOfFrameStarts(long frameNumber, int outputLine) {
            return Math.addExact(Math.multiplyExact(frameNumber, frame), firstFrame + outputLine * row);
        }
    }

    /** Gathers latencies in ticks. */
    private static final class Recorder {
        private final Clock clock;
        private final long[] least;
        private final long[] greatest;
        private BigInteger sum = BigInteger.ZERO;
        private long count;
        private int frames;

        Recorder(Clock clock, int rows) {
            this.clock = clock;
            least = new long[rows];
            greatest = new long[rows];
            Arrays.fill(least, Long.MAX_VALUE);
            Arrays.fill(greatest, Long.MIN_VALUE);
        }

        void row(int row, long latency) {
            least[row] = Math.min(least[row], latency);
            greatest[row] = Math.max(greatest[row], latency);
            sum = sum.add(BigInteger.valueOf(latency));
            count++;
        }

        Spread spread() {
            return new Spread(
                    Arrays.stream(least).mapToObj(this::seconds).toList(),
                    Arrays.stream(greatest).mapToObj(this::seconds).toList(),
                    seconds(Arrays.stream(least).min().orElseThrow()),
                    BigFraction.of(sum, clock.ticksPerSecond).divide(BigInteger.valueOf(count)),
                    seconds(Arrays.stream(greatest).max().orElseThrow()));
        }

        private BigFraction seconds(long ticks) {
            return BigFraction.of(BigInteger.valueOf(ticks), clock.ticksPerSecond);
        }
    }
}
