package rasterfit.app.collection;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Place;

/**
 * Days that make sense for gear (assumption). A year has four digits, as RFC 3339 writes it, also after all the months that
 * work may recur in.
 */
final class Days {
    private static final LocalDate FIRST = LocalDate.of(1900, 1, 1);
    private static final LocalDate LAST = LocalDate.of(2199, 12, 31);
    private static final String LIMIT = FIRST + ".." + LAST;

    /** What is told of another day. */
    static final String WORDS = "A day lies from " + FIRST + " to " + LAST + ".";

    private Days() {}

    static boolean holds(LocalDate day) {
        return !day.isBefore(FIRST) && !day.isAfter(LAST);
    }

    /** Notes a day beyond the limits. */
    static void check(Place at, @Nullable LocalDate day) {
        if (day != null && !holds(day)) {
            at.outOfRange(WORDS, LIMIT);
        }
    }
}
