package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.List;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.VideoTiming;

/**
 * Which stretch of the line becomes the active part of a line-repeated raster: the active dots, the drawn ones, a
 * stretch as wide as a 4:3 picture, or the active width of a listed timing.
 *
 * @param from lines per field that are sent
 * @param rowsSent active rows of the output raster
 */
record RepeatWindows(Captured captured, int from, int rowsSent) {
    /** Those that can be used with any number of samples. */
    List<Placement.Across> suitingAny() {
        List<Placement.Across> choices = new ArrayList<>();
        Rational active = captured.leadDots();
        choices.add(new Placement.Across.Stretch("active dots", Rational.ZERO, active, null));
        Mode lead = captured.lead();
        if (captured.modes().size() == 1 && lead.used().dots() < lead.active().dots()) {
            choices.add(new Placement.Across.Stretch(
                    "drawn dots",
                    Rational.of(lead.used().firstDot() - lead.active().firstDot()),
                    Rational.of(lead.used().dots()),
                    null));
        }
        Rational pictureDots = pictureDots();
        if (!pictureDots.equals(active)) {
            choices.add(new Placement.Across.Stretch("picture aspect", null, pictureDots, null));
        }
        return choices;
    }

    /** Dots whose shape is 4:3 over the lines sent, as far as the line has room outside of its blanking. */
    private Rational pictureDots() {
        Rational frameLines = Rational.of((long) from * captured.fieldsPerFrame());
        Rational dots = Rational.of(4, 3).times(frameLines).dividedBy(captured.leadAspect());
        return dots.min(captured.lead().dotsPerLine().times(activeShare()));
    }

    /** 720 of 858 or of 864 samples per line (ITU-R BT.601). */
    private Rational activeShare() {
        return captured.lead().lineStandard() == LineStandard.L625_50 ? Rational.of(720, 864) : Rational.of(720, 858);
    }

    /** Active widths of CTA-861 timings with the same lines whose total is this sample count, repeated or not. */
    List<Placement.Across> listed(int samples, int repetition) {
        List<Placement.Across> widths = new ArrayList<>();
        for (VideoTiming listed : Cta861.all()) {
            int total = listed.timing().horizontalTotal();
            int active = listed.timing().horizontalActive();
            boolean fits = listed.timing().verticalActive() == rowsSent
                    && total == samples * repetition
                    && active % repetition == 0;
            if (fits) {
                Placement.Across width = new Placement.Across.Stretch("listed width", null, null, active / repetition);
                if (!widths.contains(width)) {
                    widths.add(width);
                }
            }
        }
        return widths;
    }
}
