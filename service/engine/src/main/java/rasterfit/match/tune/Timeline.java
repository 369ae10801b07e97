package rasterfit.match.tune;

import java.util.function.LongUnaryOperator;

/**
 * Extremes of a quantity over all output rows. Away from the picture's edges such a quantity repeats every {@code
 * period} rows but for a constant drift, so its extremes lie in the first or last period: closed form, exact.
 */
final class Timeline {
    private Timeline() {}

    static long max(FieldRows rows, LongUnaryOperator value) {
        long max = Long.MIN_VALUE;
        int span = Math.min(rows.rows(), rows.edge() + rows.period());
        for (int row = 0; row < span; row++) {
            max = Math.max(max, value.applyAsLong(row));
        }
        for (int row = Math.max(span, rows.rows() - span); row < rows.rows(); row++) {
            max = Math.max(max, value.applyAsLong(row));
        }
        return max;
    }

    static long min(FieldRows rows, LongUnaryOperator value) {
        return -max(rows, row -> -value.applyAsLong(row));
    }
}
