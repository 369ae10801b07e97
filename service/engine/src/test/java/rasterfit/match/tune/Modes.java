package rasterfit.match.tune;

import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Window;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Short ways to write a mode in tests. */
final class Modes {
    private Modes() {}

    /** 3/2 of the 525-line subcarrier, 341 × 262, 256 dots by 240 lines from dot 65, line 18. */
    static Mode half525() {
        return of("59062500/11", "341", "262", Scan.PROGRESSIVE, new Window(256, 240, 65, 18));
    }

    static Mode of(String dotClockHz, String dotsPerLine, String linesPerField, Scan scan, Window active) {
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

    static Mode of(
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
