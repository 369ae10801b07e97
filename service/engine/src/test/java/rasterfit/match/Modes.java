package rasterfit.match;

import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Window;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Short ways to write a mode in tests. */
public final class Modes {
    private Modes() {}

    /** 3/2 of the 525-line subcarrier, 341 × 262, 256 dots by 240 lines from dot 65, line 18. */
    public static Mode half525() {
        return of("59062500/11", "341", "262", Scan.PROGRESSIVE, new Window(256, 240, 65, 18));
    }

    /** The same mode with another name, share and way of being entered. */
    public static Mode as(Mode mode, String name, int share, boolean duringPlay) {
        return new Mode(
                name,
                mode.lineStandard(),
                mode.dotClock(),
                mode.dotsPerLine(),
                mode.linesPerField(),
                mode.scan(),
                Rational.of(share),
                duringPlay,
                mode.active(),
                mode.used(),
                mode.usedAssumed(),
                mode.shape());
    }

    /** 640 dots of the square-pixel clock, 780 per line, 525/2 lines, 240 active in each field. */
    public static Mode interlaced525() {
        return of("135000000/11", "780", "525/2", Scan.INTERLACED, new Window(640, 240, 118, 18));
    }

    /** VIC 4 as a digital console sends it: 1650 × 750 at 74.25 MHz, the picture from pixel 260, line 25. */
    public static Mode digital720() {
        Window active = new Window(1280, 720, 260, 25);
        return of(
                LineStandard.OTHER,
                "74250000",
                "1650",
                "750",
                Scan.PROGRESSIVE,
                active,
                active,
                PictureShape.SQUARE_DOTS);
    }

    public static Mode of(String dotClockHz, String dotsPerLine, String linesPerField, Scan scan, Window active) {
        boolean is625 = Rational.parse(linesPerField).isGreaterThan(Rational.of(300))
                && Rational.parse(linesPerField).isLessThan(Rational.of(400));
        return of(
                is625 ? LineStandard.L625_50 : LineStandard.L525_60,
                dotClockHz,
                dotsPerLine,
                linesPerField,
                scan,
                active,
                active,
                PictureShape.TUBE_4_3);
    }

    public static Mode of(
            LineStandard standard,
            String dotClockHz,
            String dotsPerLine,
            String linesPerField,
            Scan scan,
            Window active,
            Window used,
            PictureShape shape) {
        return new Mode(
                dotClockHz + " " + dotsPerLine + " " + linesPerField,
                standard,
                Frequency.parseHz(dotClockHz),
                Rational.parse(dotsPerLine),
                Rational.parse(linesPerField),
                scan,
                Rational.ONE,
                false,
                active,
                used,
                false,
                shape);
    }
}
