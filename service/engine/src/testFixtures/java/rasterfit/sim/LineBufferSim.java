package rasterfit.sim;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.numbers.fraction.BigFraction;

/**
 * Event-by-event simulation of a converter whose output is locked to its source: arriving lines are written into a
 * line memory, output rows are read from it, and every source field makes one output frame of the same period T.
 *
 * <p>All results are exact fractions of T. Inside, time is a whole number of ticks so fine that lines, half lines and
 * rows all begin on a tick. The least offset is found by trying: the events of a field (line has arrived, row begins to
 * leave) are played in order of time and a trial fails when a row leaves before its lines are there.
 */
public final class LineBufferSim {
    private LineBufferSim() {}

    /**
     * A progressive source, locked output.
     *
     * @param sourceLines lines in one source period, blanking included; may be broken, such as 525/2
     * @param firstLine lines between the start of the source period and the first line kept
     * @param lines lines kept
     * @param outputLines lines in one output period, blanking included
     * @param firstRow output lines between the start of the output period and the first picture row
     * @param rows picture rows on which the kept lines are drawn
     * @param taps 1: each row repeats one line; even: vertical filter over so many lines
     */
    public record Locked(
            BigFraction sourceLines, int firstLine, int lines, int outputLines, int firstRow, int rows, int taps) {
        public Locked {
            checkFit(BigFraction.of(firstLine + lines), sourceLines, firstRow + rows, outputLines);
        }
    }

    /**
     * An interlaced source, every field shown as a picture of its own, one locked output frame a field. The parameters
     * are those of {@link Locked} with T the period of one field; lines of the bottom field arrive half a line later
     * after the start of their field than those of the top field.
     */
    public record Bob(
            BigFraction sourceLines,
            int firstLine,
            int linesPerField,
            int outputLines,
            int firstRow,
            int rows,
            int taps,
            Scan scan) {
        public Bob {
            checkFit(BigFraction.of(2 * (firstLine + linesPerField) + 1, 2), sourceLines, firstRow + rows, outputLines);
            if (!scan.interlaced()) {
                throw new IllegalArgumentException("a bob picture is interlaced");
            }
        }
    }

    /** What one row showed: its own line, and the time from that line's first arrival to the row's leaving, in T. */
    public record RowLatency(int row, int ownLine, BigFraction latency) {}

    /**
     * The latencies of one field's rows, in units of T.
     *
     * @param topLine latency of the first row that stands for line 0
     * @param middleLine the same for line floor(n / 2)
     * @param bottomLine the same for line n - 1. When the picture is reduced and no row stands for the line asked for,
     *     the last row that stands for an earlier line is reported, counted from that earlier line
     * @param rows every row, from the top
     */
    public record Latencies(
            BigFraction topLine,
            BigFraction middleLine,
            BigFraction bottomLine,
            BigFraction least,
            BigFraction mean,
            BigFraction greatest,
            List<RowLatency> rows) {}

    /**
     * Result for a progressive source.
     *
     * @param offset least D: start of the output period less start of the source period, in T; may be negative
     * @param peakLines most lines held at one time
     */
    public record Outcome(BigFraction offset, Latencies latencies, int peakLines) {}

    /** Result for an interlaced source; the offset is common to both fields. */
    public record BobOutcome(BigFraction offset, Latencies topField, Latencies bottomField, int peakLines) {}

    /** Simulates a progressive source. */
    public static Outcome locked(Locked in) {
        Ticks ticks = new Ticks(in.sourceLines, in.outputLines, in.firstRow);
        LinePicker picker = new LinePicker(in.lines, in.rows, in.taps, Scan.PROGRESSIVE, false);
        Field field = field(picker, ticks, in.firstLine, in.lines, false);
        long offset = leastOffset(ticks, List.of(field));
        return new Outcome(
                ticks.inPeriods(offset), latencies(ticks, field, offset), peakLines(ticks, List.of(field), offset));
    }

    /** Simulates both fields of an interlaced source. */
    public static BobOutcome bob(Bob in) {
        Ticks ticks = new Ticks(in.sourceLines, in.outputLines, in.firstRow);
        LinePicker topPicker = new LinePicker(in.linesPerField, in.rows, in.taps, in.scan, false);
        LinePicker bottomPicker = new LinePicker(in.linesPerField, in.rows, in.taps, in.scan, true);
        Field top = field(topPicker, ticks, in.firstLine, in.linesPerField, false);
        Field bottom = field(bottomPicker, ticks, in.firstLine, in.linesPerField, true);
        long offset = leastOffset(ticks, List.of(top, bottom));
        return new BobOutcome(
                ticks.inPeriods(offset),
                latencies(ticks, top, offset),
                latencies(ticks, bottom, offset),
                peakLines(ticks, List.of(top, bottom), offset));
    }

    /** The clock: one tick is T / (2 x numerator of source lines x output lines). */
    private record Ticks(long period, long sourceLine, long row, int firstRow) {
        Ticks(BigFraction sourceLines, int outputLines, int firstRow) {
            this(
                    2 * sourceLines.getNumerator().longValueExact() * outputLines,
                    2 * sourceLines.getDenominator().longValueExact() * outputLines,
                    2 * sourceLines.getNumerator().longValueExact(),
                    firstRow);
        }

        long rowLeaves(long offset, int pictureRow) {
            return offset + (firstRow + pictureRow) * row;
        }

        BigFraction inPeriods(long time) {
            return BigFraction.of(time, period);
        }
    }

    /** One kind of field: when its lines begin to arrive after its start, and what its rows need. */
    private static final class Field {
        private final long[] lineBegins;
        private final int[] own;
        private final int[][] needed;

        Field(long[] lineBegins, int[] own, int[][] needed) {
            this.lineBegins = lineBegins;
            this.own = own;
            this.needed = needed;
        }
    }

    private static Field field(LinePicker picker, Ticks ticks, int firstLine, int lines, boolean halfLineLater) {
        long[] begins = new long[lines];
        long time = firstLine * ticks.sourceLine + (halfLineLater ? ticks.sourceLine / 2 : 0);
        for (int line = 0; line < lines; line++) {
            begins[line] = time;
            time += ticks.sourceLine;
        }
        return new Field(begins, picker.ownLines(), picker.allNeededLines());
    }

    /**
     * Tries offsets by halving. At minus one period every row has left before any line came; at plus one period every
     * line is there; and once reading is late enough, reading still later is never too early.
     */
    private static long leastOffset(Ticks ticks, List<Field> fields) {
        long tooEarly = -ticks.period;
        long safe = ticks.period;
        if (allPlay(ticks, fields, tooEarly) || !allPlay(ticks, fields, safe)) {
            throw new IllegalStateException("the least offset is not within one period");
        }
        while (safe - tooEarly > 1) {
            long middle = Math.floorDiv(safe + tooEarly, 2);
            if (allPlay(ticks, fields, middle)) {
                safe = middle;
            } else {
                tooEarly = middle;
            }
        }
        return safe;
    }

    private static boolean allPlay(Ticks ticks, List<Field> fields, long offset) {
        return fields.stream().allMatch(field -> plays(ticks, field, offset));
    }

    private enum Kind {
        LINE_HAS_ARRIVED,
        ROW_BEGINS_TO_LEAVE
    }

    private record Event(long time, Kind kind, int number) {}

    /** Plays one field at the offset; false as soon as a row leaves before a line that it needs has wholly arrived. */
    private static boolean plays(Ticks ticks, Field field, long offset) {
        List<Event> events = new ArrayList<>();
        for (int line = 0; line < field.lineBegins.length; line++) {
            events.add(new Event(field.lineBegins[line] + ticks.sourceLine, Kind.LINE_HAS_ARRIVED, line));
        }
        for (int row = 0; row < field.own.length; row++) {
            events.add(new Event(ticks.rowLeaves(offset, row), Kind.ROW_BEGINS_TO_LEAVE, row));
        }
        events.sort(Comparator.comparingLong(Event::time).thenComparing(Event::kind));
        boolean[] arrived = new boolean[field.lineBegins.length];
        for (Event event : events) {
            if (event.kind == Kind.LINE_HAS_ARRIVED) {
                arrived[event.number] = true;
            } else if (!Arrays.stream(field.needed[event.number]).allMatch(line -> arrived[line])) {
                return false;
            }
        }
        return true;
    }

    private static Latencies latencies(Ticks ticks, Field field, long offset) {
        List<RowLatency> rows = new ArrayList<>();
        long least = Long.MAX_VALUE;
        long greatest = Long.MIN_VALUE;
        long sum = 0;
        for (int row = 0; row < field.own.length; row++) {
            int own = field.own[row];
            long latency = ticks.rowLeaves(offset, row) - field.lineBegins[own];
            rows.add(new RowLatency(row, own, ticks.inPeriods(latency)));
            least = Math.min(least, latency);
            greatest = Math.max(greatest, latency);
            sum = Math.addExact(sum, latency);
        }
        int lines = field.lineBegins.length;
        return new Latencies(
                firstRowOf(0, rows),
                firstRowOf(lines / 2, rows),
                firstRowOf(lines - 1, rows),
                ticks.inPeriods(least),
                ticks.inPeriods(sum).divide(BigInteger.valueOf(rows.size())),
                ticks.inPeriods(greatest),
                List.copyOf(rows));
    }

    private static BigFraction firstRowOf(int line, List<RowLatency> rows) {
        RowLatency lastBefore = rows.get(0);
        for (RowLatency row : rows) {
            if (row.ownLine == line) {
                return row.latency;
            }
            if (row.ownLine < line) {
                lastBefore = row;
            }
        }
        return lastBefore.latency;
    }

    private record Change(long time, int places) {}

    /**
     * Runs some fields one after another (a line lives less than three periods, so six fields show the steady state)
     * and counts the places taken. A line takes its place when it begins to arrive and gives it up when the last row
     * that needs it has wholly left; a line that no row needs is never stored.
     */
    private static int peakLines(Ticks ticks, List<Field> kinds, long offset) {
        List<Change> changes = new ArrayList<>();
        for (int number = 0; number < 6; number++) {
            Field field = kinds.get(number % kinds.size());
            int[] lastRows = lastRowsThatNeed(field);
            long start = number * ticks.period;
            for (int line = 0; line < field.lineBegins.length; line++) {
                int lastRow = lastRows[line];
                if (lastRow >= 0) {
                    changes.add(new Change(start + field.lineBegins[line], 1));
                    changes.add(new Change(start + ticks.rowLeaves(offset, lastRow) + ticks.row, -1));
                }
            }
        }
        changes.sort(Comparator.comparingLong(Change::time).thenComparingInt(Change::places));
        int held = 0;
        int peak = 0;
        for (Change change : changes) {
            held += change.places;
            peak = Math.max(peak, held);
        }
        if (held != 0) {
            throw new IllegalStateException("lines left in the memory: " + held);
        }
        return peak;
    }

    /** For every line the last row that needs it, −1 where none does. */
    private static int[] lastRowsThatNeed(Field field) {
        int[] last = new int[field.lineBegins.length];
        Arrays.fill(last, -1);
        for (int row = 0; row < field.needed.length; row++) {
            for (int line : field.needed[row]) {
                last[line] = row;
            }
        }
        return last;
    }

    private static void checkFit(BigFraction lastLineEnds, BigFraction sourceLines, int lastRowEnds, int outputLines) {
        if (lastLineEnds.compareTo(sourceLines) > 0) {
            throw new IllegalArgumentException("the kept lines reach beyond the source period");
        }
        if (lastRowEnds > outputLines) {
            throw new IllegalArgumentException("the rows reach beyond the output period");
        }
    }
}
