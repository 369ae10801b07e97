package rasterfit.identify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.Basis;
import rasterfit.gear.LineStandard;
import rasterfit.identify.Candidate.Kind;
import rasterfit.identify.Identification.Derived;
import rasterfit.identify.Identification.Open;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** What an identification says beside the timings: order, bases, what follows, what stays open. */
class IdentificationTest {
    @Test
    void whatIsMostTellingStaysOpenFirst() {
        // SMPTE 170M's line in whole or half dots: twelve clocks, each with 262, 262.5 and 263 lines.
        List<Open> open = Measured.nothing()
                .with(Measurand.LINE_RATE, "15734.27", 20)
                .identified()
                .open();
        assertThat(open).extracting(Open::mostLeft).containsExactly(3, 3, 12, 12, 24);
        assertThat(open.subList(0, 2)).extracting(Open::member).containsExactly("dotClockHz", "dotsPerLine");
        assertThat(open.get(4).member()).isEqualTo("scan");
        assertThat(open.get(4).values()).containsExactly("PROGRESSIVE", "INTERLACED");
        assertThat(open.get(4).closestPpm()).isNull();
    }

    @ParameterizedTest(name = "{0} dots of {1} Hz")
    @CsvSource({
        // 5 320 342.5 / 342 = 15 556.6 Hz: the clock's own system has 625 lines (ITU-R BT.1700).
        "342, 5320342.5, L625_50, false",
        // 13.5 MHz (both systems) / 862 = 15 661 Hz, nearer to 15 625; / 850 = 15 882 Hz, nearer to 15 734.
        "862, 13500000, L625_50, false",
        "850, 13500000, L525_60, false",
        // 27 MHz / 862 = 31 322 Hz: twice 15 661.
        "862, 27000000, L625_50, true"
    })
    void linesThatNobodyCountedAreThoseOfTheLine(
            String dots, String clock, LineStandard standard, boolean isFullHeight) {
        Identification found = Measured.nothing()
                .with(Measurand.DOT_CLOCK, clock, 10)
                .count(Measurand.DOTS_PER_LINE, dots)
                .identified();
        assertThat(found.candidates()).isNotEmpty().allSatisfy(candidate -> {
            assertThat(candidate.timing().lineStandard()).isEqualTo(standard);
            assertThat(candidate.timing().linesPerField().isGreaterThan(Rational.of(400)))
                    .isEqualTo(isFullHeight);
            assertThat(candidate.bases().linesPerField()).isEqualTo(Basis.ASSUMED);
        });
    }

    @Test
    void theLineRateIsWhatAllWaysToItShare() {
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15626", 200)
                .with(Measurand.LINE_PERIOD, "64", 0)
                .count(Measurand.LINES_PER_FIELD, "312")
                .identified();
        // 64 µs exactly: 15 625 / 312 Hz.
        assertThat(found.derived()).hasSize(1);
        Derived fieldRate = found.derived().get(0);
        assertThat(fieldRate.measurand()).isEqualTo(Measurand.FIELD_RATE);
        assertThat(fieldRate.value()).isEqualTo(Bounds.exactly(Rational.of(15_625, 312)));
        assertThat(fieldRate.from()).containsExactly("lineRateHz", "linePeriodUs", "linesPerField");
    }

    @Test
    void dotsFollowFromClockAndLineRate() {
        // ITU-R BT.601: 13.5 MHz in 64 µs are 864 samples.
        Identification found = Measured.nothing()
                .with(Measurand.DOT_CLOCK, "13500000", 0)
                .with(Measurand.LINE_PERIOD, "64", 0)
                .identified();
        assertThat(found.derived())
                .contains(new Derived(
                        Measurand.DOTS_PER_LINE,
                        Bounds.exactly(Rational.of(864)),
                        List.of("linePeriodUs", "dotClockHz")));
        assertThat(found.candidates().get(0).bases().dotsPerLine()).isEqualTo(Basis.COMPUTED);
    }

    @Test
    void aClockThatIsTheOnlyKnownOneIsStillAssumed() {
        // CTA-861-I table 1: 1716 pixels of 27 MHz; nothing measured leads to the clock.
        Candidate best = Measured.nothing()
                .count(Measurand.DOTS_PER_LINE, "1716")
                .count(Measurand.LINES_PER_FIELD, "262")
                .identified()
                .candidates()
                .get(0);
        assertThat(best.known().id()).isEqualTo("l525-p262-luma2-d1716");
        assertThat(best.bases().dotClock()).isEqualTo(Basis.ASSUMED);
        assertThat(best.bases().scan()).isEqualTo(Basis.COMPUTED);
    }

    @Test
    void theLinesOfAFrameNeedNoScan() {
        // CTA-861-I table 1, VIC 2: 525 lines at 31.469 kHz.
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "31469", 50)
                .count(Measurand.LINES_PER_FRAME, "525")
                .identified();
        assertThat(found.derived()).isEmpty();
        assertThat(found.candidates().get(0).known().id()).isEqualTo("l525-p525-luma2-d858");
        assertThat(found.candidates().get(0).bases().scan()).isEqualTo(Basis.COMPUTED);
    }

    @Test
    void everyGivenValueCounts() {
        assertThat(Measured.nothing()
                        .with(Measurand.LINE_RATE, "15734", 100)
                        .count(Measurand.LINES_PER_FIELD, "262")
                        .scan(Scan.PROGRESSIVE)
                        .picture(new Picture(256, 224, 60, 20))
                        .identified()
                        .given())
                .isEqualTo(7);
    }

    @Test
    void aPictureOfUsualWidthComesBeforeOthersAndClassesBeforeTheRest() {
        List<Candidate> found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15699.76", 20)
                .count(Measurand.LINES_PER_FIELD, "262")
                .active(640, null)
                .identified()
                .candidates();
        // 640 of 684 dots leave too little for sync; of 912 they are 44.7 µs, 86 % of 52.
        assertThat(found.get(0).timing().dotsPerLine()).isEqualTo(Rational.of(912));
        assertThat(found.get(0).kind()).isEqualTo(Kind.COMPOSED);
        assertThat(found).extracting(Candidate::usualWidth).isSortedAccordingTo((a, b) -> Boolean.compare(b, a));
        List<Candidate> narrow = Measured.nothing()
                .with(Measurand.LINE_RATE, "15699.76", 20)
                .count(Measurand.LINES_PER_FIELD, "262")
                .active(256, null)
                .identified()
                .candidates();
        assertThat(narrow).extracting(Candidate::usualWidth).contains(true, false);
        assertThat(narrow).extracting(Candidate::usualWidth).isSortedAccordingTo((a, b) -> Boolean.compare(b, a));
    }

    @Test
    void theUsualWidthIsThatOfTheStandards() {
        // ITU-R BT.601: 720 of 858 and of 864 samples.
        Picture full = new Picture(720, null, null, null);
        assertThat(full.isOfUsualWidth(Rational.of(858))).isTrue();
        assertThat(full.isOfUsualWidth(Rational.of(864))).isTrue();
        assertThat(full.isOfUsualWidth(Rational.of(1716))).isFalse();
        assertThat(full.isOfUsualWidth(Rational.of(780))).isFalse();
        assertThat(Picture.UNKNOWN.isOfUsualWidth(Rational.of(858))).isNull();
    }

    @Test
    void aKnownScanSettlesACountThatTheRatesLeaveOpen() {
        // 31 000 Hz over 59.0476 Hz is 525.0, to 1 000 ppm from 524.5 to 525.5 lines.
        Measured measured = Measured.nothing()
                .with(Measurand.LINE_RATE, "31000", 0)
                .count(Measurand.DOTS_PER_LINE, "800")
                .with(Measurand.FIELD_RATE, "59.0476", 1_000);
        assertThat(measured.identified().candidates()).noneMatch(candidate -> candidate.kind() == Kind.AS_MEASURED);
        Candidate best =
                measured.scan(Scan.PROGRESSIVE).identified().candidates().get(0);
        assertThat(best.kind()).isEqualTo(Kind.AS_MEASURED);
        assertThat(best.timing().linesPerField()).isEqualTo(Rational.of(525));
        assertThat(best.bases().scan()).isEqualTo(Basis.MEASURED);
    }

    @Test
    void countsAreThoseThatAreCounted() {
        assertThat(List.of(Measurand.values()))
                .filteredOn(Measurand::isCount)
                .containsExactlyInAnyOrderElementsOf(
                        Set.of(Measurand.LINES_PER_FIELD, Measurand.LINES_PER_FRAME, Measurand.DOTS_PER_LINE));
    }

    @Test
    void aContradictionPrintsRangesAsRangesAndCountsAsCounts() {
        String message = Measured.nothing()
                .with(Measurand.LINES_PER_FIELD, Bounds.between(Rational.of(262), Rational.of(263)))
                .count(Measurand.LINES_PER_FRAME, "625")
                .identified()
                .contradictions()
                .get(0)
                .message();
        assertThat(message).contains("linesPerField is 262 to 263,", "linesPerFrame is 625:");
        String rates = Measured.nothing()
                .with(Measurand.LINE_RATE, "15625", 0)
                .with(Measurand.LINE_PERIOD, "63.5", 0)
                .identified()
                .contradictions()
                .get(0)
                .message();
        // 1 / 63.5 µs = 15 748.031 Hz.
        assertThat(rates).contains("15625 Hz, but", "15748.031 Hz: ").doesNotContain(" to ");
    }

    @Test
    void aKnownScanDecidesHowManyFieldsAFrameHas() {
        Measured counted =
                Measured.nothing().count(Measurand.LINES_PER_FIELD, "262").count(Measurand.LINES_PER_FRAME, "524");
        assertThat(counted.identified().contradictions()).isEmpty();
        assertThat(counted.scan(Scan.PROGRESSIVE).identified().contradictions())
                .extracting(Contradiction::members)
                .containsExactly(List.of("linesPerField", "linesPerFrame"));
    }
}
