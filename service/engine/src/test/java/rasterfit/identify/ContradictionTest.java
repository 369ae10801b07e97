package rasterfit.identify;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Values that exclude each other are named with both numbers, and nothing is worked out from them. */
class ContradictionTest {
    @Test
    void aFieldRateThatTheLinesDoNotGive() {
        // 15 750 / 262 = 60.1145 Hz; round figures of the trade do not fit 262 lines.
        Contradiction found = only(Measured.nothing()
                .with(Measurand.LINE_RATE, "15750", 100)
                .with(Measurand.FIELD_RATE, "60", 100)
                .count(Measurand.LINES_PER_FIELD, "262"));
        assertThat(found.members()).containsExactly("lineRateHz", "linesPerField", "fieldRateHz");
        assertThat(found.message()).contains("60.114504 Hz", "60 Hz", "1904.7619 ppm");
    }

    @Test
    void ratesThatJustMeetDoNotContradict() {
        // 100 Hz/8 lines = 12.5 Hz; 1 % up and 1 % down: from 12.375 and to 12.625, and 12.25 + 1.0204 % = 12.375.
        Bounds tenPercent = Bounds.around(Rational.parse("12.25"), Rational.parse("0.125"));
        Measured touching = Measured.nothing()
                .with(Measurand.LINE_RATE, Bounds.within(Rational.of(100), Rational.of(10_000)))
                .count(Measurand.LINES_PER_FIELD, "8")
                .with(Measurand.FIELD_RATE, tenPercent);
        assertThat(touching.identified().contradictions()).isEmpty();
        Bounds lower = Bounds.around(Rational.parse("12.25"), Rational.parse("0.124"));
        assertThat(touching.with(Measurand.FIELD_RATE, lower).identified().contradictions())
                .hasSize(1);
    }

    @Test
    void aLinePeriodThatIsNotTheInverseOfTheLineRate() {
        // 64 µs are 15 625 Hz (ITU-R BT.1700), 63.556 µs 15 734 Hz (SMPTE 170M).
        Contradiction found =
                only(Measured.nothing().with(Measurand.LINE_RATE, "15734", 100).with(Measurand.LINE_PERIOD, "64", 100));
        assertThat(found.members()).containsExactly("lineRateHz", "linePeriodUs");
        assertThat(found.message()).contains("15734 Hz", "15625 Hz");
    }

    @Test
    void aClockOverDotsThatIsNotTheLineRate() {
        // ITU-R BT.601: 13.5 MHz / 864 = 15 625 Hz, / 858 = 15 734 Hz.
        Contradiction found = only(Measured.nothing()
                .with(Measurand.LINE_RATE, "15625", 100)
                .with(Measurand.DOT_CLOCK, "13500000", 100)
                .count(Measurand.DOTS_PER_LINE, "858"));
        assertThat(found.members()).containsExactly("lineRateHz", "dotClockHz", "dotsPerLine");
        assertThat(found.message()).contains("dotClockHz and dotsPerLine give one of 15734.266 Hz");
    }

    @Test
    void linesOfAFieldAndOfAFrameThatDoNotGoTogether() {
        Contradiction found = only(
                Measured.nothing().count(Measurand.LINES_PER_FIELD, "262").count(Measurand.LINES_PER_FRAME, "525"));
        assertThat(found.members()).containsExactly("linesPerField", "linesPerFrame");
        assertThat(Measured.nothing()
                        .count(Measurand.LINES_PER_FIELD, "525/2")
                        .count(Measurand.LINES_PER_FRAME, "525")
                        .identified()
                        .contradictions())
                .isEmpty();
    }

    @Test
    void aScanThatTheLinesDeny() {
        assertThat(only(Measured.nothing()
                                .count(Measurand.LINES_PER_FIELD, "262")
                                .scan(Scan.INTERLACED))
                        .members())
                .containsExactly("linesPerField", "scan");
        assertThat(only(Measured.nothing()
                                .count(Measurand.LINES_PER_FIELD, "625/2")
                                .scan(Scan.PROGRESSIVE))
                        .members())
                .containsExactly("linesPerField", "scan");
        assertThat(only(Measured.nothing()
                                .count(Measurand.LINES_PER_FRAME, "524")
                                .scan(Scan.INTERLACED))
                        .members())
                .containsExactly("linesPerFrame", "scan");
        assertThat(Measured.nothing()
                        .with(Measurand.LINES_PER_FIELD, Bounds.between(Rational.of(262), Rational.of(263)))
                        .scan(Scan.INTERLACED)
                        .identified()
                        .contradictions())
                .isEmpty();
    }

    @Test
    void aPictureThatLeavesNoRoomForSync() {
        // ITU-R BT.1700: 4.7 of 64 µs for line sync, so at most 315.9 of 341 dots; 2.5 lines for field sync.
        assertThat(only(Measured.nothing().count(Measurand.DOTS_PER_LINE, "341").active(316, null))
                        .members())
                .containsExactly("active/dots", "dotsPerLine");
        assertThat(only(Measured.nothing()
                                .count(Measurand.LINES_PER_FIELD, "262")
                                .active(null, 260))
                        .members())
                .containsExactly("active/lines", "linesPerField");
        assertThat(Measured.nothing()
                        .count(Measurand.DOTS_PER_LINE, "341")
                        .count(Measurand.LINES_PER_FIELD, "262")
                        .active(315, 259)
                        .identified()
                        .contradictions())
                .isEmpty();
    }

    @Test
    void aPictureThatEndsAfterItsLineOrField() {
        Measured counted =
                Measured.nothing().count(Measurand.DOTS_PER_LINE, "341").count(Measurand.LINES_PER_FIELD, "262");
        assertThat(only(counted.picture(new Picture(256, 224, 86, 38))).members())
                .containsExactly("active/firstDot", "dotsPerLine");
        assertThat(only(counted.picture(new Picture(256, 224, 85, 39))).members())
                .containsExactly("active/firstLine", "linesPerField");
        assertThat(counted.picture(new Picture(256, 224, 85, 38)).identified().contradictions())
                .isEmpty();
        assertThat(only(counted.picture(new Picture(null, null, 341, null))).message())
                .contains("active/firstDot", "342 dots", "341 in all");
    }

    private static Contradiction only(Measured measured) {
        Identification found = measured.identified();
        assertThat(found.contradictions()).hasSize(1);
        assertThat(found.candidates()).isEmpty();
        return found.contradictions().get(0);
    }
}
