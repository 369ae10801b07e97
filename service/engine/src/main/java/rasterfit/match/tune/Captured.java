package rasterfit.match.tune;

import java.util.List;
import rasterfit.gear.Mode;
import rasterfit.gear.Window;
import rasterfit.match.PixelAspectConvention;
import rasterfit.quantity.Rational;

/**
 * The stretch of the line and of the field that holds the active pictures of all modes of a group, since equipment that
 * cannot tell them apart captures them with one setting. Positions along the line are shares of a line.
 *
 * @param lead the mode with the greatest share, the first of equals: settings that count dots count its dots
 * @param left left edge of the earliest active dot, as a share of the line
 * @param right right edge of the latest active dot
 * @param firstLine first line of the field that is active in any mode
 * @param lines lines of the field from there to the last that is active in any mode
 * @param usedFirstLine first line really drawn in any mode
 * @param usedLines lines from there to the last really drawn
 * @param leadAspect intended pixel aspect of the lead mode
 */
record Captured(
        List<Mode> modes,
        Mode lead,
        Rational left,
        Rational right,
        int firstLine,
        int lines,
        int usedFirstLine,
        int usedLines,
        Rational leadAspect,
        PixelAspectConvention convention) {

    static Captured of(List<Mode> modes, PixelAspectConvention convention) {
        Mode lead = modes.get(0);
        Rational left = null;
        Rational right = null;
        int top = Integer.MAX_VALUE;
        int bottom = 0;
        int usedTop = Integer.MAX_VALUE;
        int usedBottom = 0;
        for (Mode mode : modes) {
            Window active = mode.active();
            Window used = mode.used();
            lead = mode.share().isGreaterThan(lead.share()) ? mode : lead;
            Rational from = Rational.of(active.firstDot()).dividedBy(mode.dotsPerLine());
            Rational to = Rational.of(active.firstDot() + active.dots()).dividedBy(mode.dotsPerLine());
            left = left == null ? from : left.min(from);
            right = right == null ? to : right.max(to);
            top = Math.min(top, active.firstLine());
            bottom = Math.max(bottom, active.firstLine() + active.lines());
            usedTop = Math.min(usedTop, used.firstLine());
            usedBottom = Math.max(usedBottom, used.firstLine() + used.lines());
        }
        if (left == null || right == null) {
            throw new IllegalArgumentException("a group of modes is not empty");
        }
        return new Captured(
                List.copyOf(modes),
                lead,
                left,
                right,
                top,
                bottom - top,
                usedTop,
                usedBottom - usedTop,
                PixelAspect.intended(lead, convention, Steps.SILENT),
                convention);
    }

    int fieldsPerFrame() {
        return lead.scan().fieldsPerFrame();
    }

    boolean isInterlaced() {
        return lead.isInterlaced();
    }

    /** Width of the captured stretch in dots of the lead mode. */
    Rational leadDots() {
        return right.minus(left).times(lead.dotsPerLine());
    }

    /** Position of a mode's dot from the left edge of the captured stretch, in dots of that mode. */
    Rational offsetOf(Mode mode, int dot) {
        return Rational.of(dot).minus(left.times(mode.dotsPerLine()));
    }
}
