package rasterfit.identify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Rational;

/**
 * What was counted of the picture; lines are those of a field. Positions are 0-based, from the leading edges of sync.
 *
 * @param dots any of the four may be absent
 */
public record Picture(
        @Nullable Integer dots,
        @Nullable Integer lines,
        @Nullable Integer firstDot,
        @Nullable Integer firstLine) {

    public static final Picture UNKNOWN = new Picture(null, null, null, null);

    /** Field sync takes 2.5 lines (ITU-R BT.1700). */
    private static final Rational FIELD_SYNC_LINES = Rational.of(5, 2);

    /** Line sync takes 4.7 µs of 64 µs (ITU-R BT.1700); at twice the line rate half of it. */
    private static final Rational LINE_SYNC_SHARE = Rational.of(47, 640);

    /** The picture takes 52 µs of 64 µs (ITU-R BT.1700: 12 µs of blanking); the 525-line share is the same to 2 %. */
    private static final Rational STANDARD_SHARE = Rational.of(52, 64);

    /** Consoles draw at least so much of the standard's picture width, and at most the 720 samples of ITU-R BT.601 (assumption). */
    private static final Rational LEAST_USUAL_WIDTH = Rational.of(80, 100);

    private static final Rational GREATEST_USUAL_WIDTH = Rational.of(104, 100);

    /** Something counted that a line or a field cannot hold. */
    record Excess(String member, int end, Measurand total) {}

    int given() {
        int given = 0;
        for (Integer count : new Integer[] {dots, lines, firstDot, firstLine}) {
            given += count == null ? 0 : 1;
        }
        return given;
    }

    /** What does not fit beside sync into lines and fields of these sizes; an unknown size holds everything. */
    List<Excess> beyond(Optional<Rational> dotsPerLine, Optional<Rational> linesPerField) {
        List<Excess> excesses = new ArrayList<>();
        dotsPerLine.ifPresent(total -> {
            Rational room = total.times(Rational.ONE.minus(LINE_SYNC_SHARE));
            side(excesses, "Dot", dots, firstDot, room, total, Measurand.DOTS_PER_LINE);
        });
        linesPerField.ifPresent(total -> {
            Rational room = total.minus(FIELD_SYNC_LINES);
            side(excesses, "Line", lines, firstLine, room, total, Measurand.LINES_PER_FIELD);
        });
        return excesses;
    }

    private static void side(
            List<Excess> excesses,
            String what,
            @Nullable Integer size,
            @Nullable Integer first,
            Rational room,
            Rational total,
            Measurand measurand) {
        if (size != null && Rational.of(size).isGreaterThan(room)) {
            excesses.add(new Excess(what.equals("Dot") ? "active/dots" : "active/lines", size, measurand));
        } else if (first != null) {
            int end = first + (size == null ? 1 : size);
            if (Rational.of(end).isGreaterThan(total)) {
                excesses.add(new Excess("active/first" + what, end, measurand));
            }
        }
    }

    /** Whether the dots make a picture about as wide as the standard's; null if they were not counted. */
    @Nullable
    Boolean isOfUsualWidth(Rational dotsPerLine) {
        if (dots == null) {
            return null;
        }
        Rational width = Rational.of(dots).dividedBy(dotsPerLine).dividedBy(STANDARD_SHARE);
        return !width.isLessThan(LEAST_USUAL_WIDTH) && !width.isGreaterThan(GREATEST_USUAL_WIDTH);
    }
}
