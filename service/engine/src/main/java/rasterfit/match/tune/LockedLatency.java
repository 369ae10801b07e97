package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import rasterfit.quantity.Rational;

/**
 * Delay of a converter whose output runs in step with its source, by lines held in memory.
 *
 * <p>Source line i has arrived at (a + i + 1)·T/L; output row j starts at D + (ao + j)·T/Lo. D is the least offset at
 * which no row starts before its lines have arrived. Everything is counted in units of T/(2·L·Lo), which makes all
 * terms whole numbers.
 *
 * @param halfLines 2·L: twice the source lines per field (525 for an interlaced 525-line raster)
 * @param firstLine a, counted from the leading edge of vertical sync
 * @param lines n
 * @param outputLines Lo
 * @param firstRow ao
 * @param rows no
 * @param taps k of the vertical filter
 */
record LockedLatency(
        int halfLines,
        int firstLine,
        int lines,
        boolean interlaced,
        int outputLines,
        int firstRow,
        int rows,
        int taps) {

    /**
     * All times as multiples of the source's field period.
     *
     * @param offset D
     * @param capacity lines of memory needed
     */
    record Result(
            Rational offset,
            Rational top,
            Rational middle,
            Rational bottom,
            Rational least,
            Rational greatest,
            int capacity) {}

    /** One field of the source: its rows, and whether it starts half a line later. */
    private record Field(FieldRows map, int late) {}

    private List<Field> fields() {
        List<Field> fields = new ArrayList<>();
        if (interlaced) {
            fields.add(new Field(new FieldRows(lines, rows, taps, 1), 0));
            fields.add(new Field(new FieldRows(lines, rows, taps, -1), 1));
        } else {
            fields.add(new Field(new FieldRows(lines, rows, taps, 0), 0));
        }
        return fields;
    }

    Result measure() {
        List<Field> fields = fields();
        long offset = Long.MIN_VALUE;
        for (Field field : fields) {
            offset = Math.max(
                    offset,
                    Timeline.max(field.map(), row -> arrival(field, field.map().needed(row) + 1L) - departure(0, row)));
        }
        long least = Long.MAX_VALUE;
        long greatest = Long.MIN_VALUE;
        long top = Long.MIN_VALUE;
        long middle = Long.MIN_VALUE;
        long bottom = Long.MIN_VALUE;
        long start = offset;
        for (Field field : fields) {
            least = Math.min(least, Timeline.min(field.map(), row -> latency(field, start, row)));
            greatest = Math.max(greatest, Timeline.max(field.map(), row -> latency(field, start, row)));
            top = Math.max(top, latency(field, start, field.map().firstRowOf(0)));
            middle = Math.max(middle, latency(field, start, field.map().firstRowOf(lines / 2)));
            bottom = Math.max(bottom, latency(field, start, field.map().firstRowOf(lines - 1)));
        }
        long line = 2L * outputLines;
        int behind = Math.max(0, taps / 2 - 1);
        int capacity = (int) -Math.floorDiv(-(greatest + halfLines), line) + behind;
        return new Result(
                units(offset), units(top), units(middle), units(bottom), units(least), units(greatest), capacity);
    }

    /** Mean over all rows (of both fields), as a multiple of the source's field period. */
    Rational mean(Result result) {
        long offset = result.offset().times(unitsPerField()).floor();
        long sum = 0;
        List<Field> fields = fields();
        for (Field field : fields) {
            for (int row = 0; row < rows; row++) {
                sum += latency(field, offset, row);
            }
        }
        return Rational.of(sum, (long) fields.size() * rows).dividedBy(unitsPerField());
    }

    /** When the given line of the field begins to arrive. */
    private long arrival(Field field, long line) {
        return (2 * (firstLine + line) + field.late()) * outputLines;
    }

    private long departure(long offset, long row) {
        return offset + (firstRow + row) * halfLines;
    }

    private long latency(Field field, long offset, long row) {
        return departure(offset, row) - arrival(field, field.map().own(row));
    }

    private long unitsPerField() {
        return (long) halfLines * outputLines;
    }

    private Rational units(long count) {
        return Rational.of(count, unitsPerField());
    }
}
