package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;

/**
 * Delay of a converter whose output runs at a rate of its own, by whole fields held in memory.
 *
 * <p>With two or more stores a row shows the newest field that was complete when its output frame began: (n − i)·T/L
 * since line i began, an age between 0 and min(T, To), and j·To/Lo of scanning out. With a single store a row shows
 * whatever line was last written: between one line and one line plus min(T, To).
 *
 * @param line T/L
 * @param period T of the source's field
 * @param lines n
 * @param outputLine To/Lo
 * @param outputPeriod To
 * @param rows no
 */
record FreeLatency(
        TimeSpan line,
        TimeSpan period,
        int lines,
        boolean interlaced,
        TimeSpan outputLine,
        TimeSpan outputPeriod,
        int rows,
        int fieldStores) {

    /** Spans at mean age, but for the extremes. */
    record Result(TimeSpan top, TimeSpan middle, TimeSpan bottom, TimeSpan least, TimeSpan greatest) {}

    private List<FieldRows> fields() {
        List<FieldRows> fields = new ArrayList<>();
        if (interlaced) {
            fields.add(new FieldRows(lines, rows, 1, 1));
            fields.add(new FieldRows(lines, rows, 1, -1));
        } else {
            fields.add(new FieldRows(lines, rows, 1, 0));
        }
        return fields;
    }

    TimeSpan greatestAge() {
        return period.min(outputPeriod);
    }

    Result measure() {
        TimeSpan meanAge = greatestAge().times(Rational.HALF);
        if (fieldStores == 1) {
            TimeSpan mean = line.plus(meanAge);
            return new Result(mean, mean, mean, line, line.plus(greatestAge()));
        }
        TimeSpan top = TimeSpan.ZERO;
        TimeSpan middle = TimeSpan.ZERO;
        TimeSpan bottom = TimeSpan.ZERO;
        TimeSpan least = new TimeSpan(Rational.of(Long.MAX_VALUE));
        TimeSpan greatest = TimeSpan.ZERO;
        for (FieldRows field : fields()) {
            top = top.max(atAgeZero(field, field.firstRowOf(0)));
            middle = middle.max(atAgeZero(field, field.firstRowOf(lines / 2)));
            bottom = bottom.max(atAgeZero(field, field.firstRowOf(lines - 1)));
            for (int row : extremeRows(field)) {
                TimeSpan span = atAgeZero(field, row);
                least = least.min(span);
                greatest = greatest.max(span);
            }
        }
        return new Result(
                top.plus(meanAge), middle.plus(meanAge), bottom.plus(meanAge), least, greatest.plus(greatestAge()));
    }

    private TimeSpan atAgeZero(FieldRows field, int row) {
        return line.times((long) lines - field.own(row)).plus(outputLine.times(row));
    }

    /**
     * Rows that can hold an extreme: those of the first and the last period whose value, in floating point, lies within
     * rounding of the extreme there; the exact comparison is then made among few.
     */
    private List<Integer> extremeRows(FieldRows field) {
        double lineSeconds = line.seconds().toDouble();
        double rowSeconds = outputLine.seconds().toDouble();
        int span = Math.min(rows, field.edge() + field.period());
        double max = Double.NEGATIVE_INFINITY;
        double min = Double.POSITIVE_INFINITY;
        for (int row = 0; row < rows; row = next(row, span)) {
            double value = (lines - field.own(row)) * lineSeconds + row * rowSeconds;
            max = Math.max(max, value);
            min = Math.min(min, value);
        }
        double margin = period.seconds().toDouble() * 1e-9;
        List<Integer> extreme = new ArrayList<>();
        for (int row = 0; row < rows; row = next(row, span)) {
            double value = (lines - field.own(row)) * lineSeconds + row * rowSeconds;
            if (value > max - margin || value < min + margin) {
                extreme.add(row);
            }
        }
        return extreme;
    }

    private int next(int row, int span) {
        return row + 1 == span ? Math.max(span, rows - span) : row + 1;
    }
}
