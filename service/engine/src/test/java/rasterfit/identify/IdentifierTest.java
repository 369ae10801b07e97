package rasterfit.identify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Basis;
import rasterfit.gear.LineStandard;
import rasterfit.identify.Candidate.Kind;
import rasterfit.identify.Identification.Derived;
import rasterfit.identify.Identification.Open;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/**
 * Published rates and counts, as an instrument would show them, lead back to their timings. Sources of the figures stand
 * beside them; sums from exact clocks are marked as arithmetic.
 */
class IdentifierTest {
    @Test
    void aLineAndAFieldRateTellTheLinesAndLeaveTheClockOpen() {
        // Arithmetic: 3/2 · 315/88 MHz / 341 = 15 745.801 Hz; / 262 = 60.098478 Hz.
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15745.8", 50)
                .with(Measurand.FIELD_RATE, "60.0985", 50)
                .identified();
        Candidate best = found.candidates().get(0);
        assertTiming(best, "59062500/11", "341", "262");
        assertThat(best.known()).isNotNull();
        assertThat(best.timing().scan()).isEqualTo(Scan.PROGRESSIVE);
        assertThat(best.bases())
                .isEqualTo(new Candidate.Bases(
                        Basis.COMPUTED, Basis.ASSUMED, Basis.ASSUMED, Basis.COMPUTED, Basis.COMPUTED));
        // Twice the clock has twice the dots on the same line.
        assertThat(found.candidates()).anySatisfy(candidate -> assertTiming(candidate, "118125000/11", "682", "262"));
        assertThat(found.fitting()).isEqualTo(found.candidates().size()).isGreaterThan(1);
        assertThat(found.open()).extracting(Open::member).containsExactlyInAnyOrder("dotClockHz", "dotsPerLine");
    }

    @Test
    void deviationsAreMeasuredAgainstTheExactTiming() {
        Candidate best = Measured.nothing()
                .count(Measurand.DOTS_PER_LINE, "858")
                .with(Measurand.DOT_CLOCK, "13500135", 50)
                .with(Measurand.FIELD_RATE, "59.94", 5)
                .identified()
                .candidates()
                .get(0);
        // ITU-R BT.601: 13.5 MHz, 858 samples; SMPTE 170M: 60/1.001 Hz.
        assertTiming(best, "13500000", "858", "525/2");
        // 135 / 13.5 million is 10 ppm; 59.94 / (60/1.001) - 1 = -1e-6.
        assertThat(deviation(best, Measurand.DOT_CLOCK).ppm()).isEqualTo(Rational.of(10));
        assertThat(deviation(best, Measurand.FIELD_RATE).ppm()).isEqualTo(Rational.of(-1));
        assertThat(deviation(best, Measurand.DOTS_PER_LINE).ppm()).isEqualTo(Rational.ZERO);
        assertThat(best.deviations()).allMatch(Candidate.Deviation::within);
    }

    @Test
    void dotsAndLineRateGiveTheClock() {
        // ITU-R BT.601 and BT.1700: 864 samples of 13.5 MHz in a line of 64 µs, 625 lines.
        Identification found = Measured.nothing()
                .with(Measurand.LINE_PERIOD, "64", 100)
                .count(Measurand.DOTS_PER_LINE, "864")
                .count(Measurand.LINES_PER_FRAME, "625")
                .scan(Scan.INTERLACED)
                .identified();
        Candidate best = found.candidates().get(0);
        assertTiming(best, "13500000", "864", "625/2");
        assertThat(best.bases().dotClock()).isEqualTo(Basis.COMPUTED);
        assertThat(best.bases().dotsPerLine()).isEqualTo(Basis.MEASURED);
        assertThat(best.bases().scan()).isEqualTo(Basis.MEASURED);
        assertThat(best.bases().linesPerField()).isEqualTo(Basis.COMPUTED);
        assertThat(found.fitting()).isEqualTo(1);
        assertThat(found.open()).isEmpty();
        assertThat(found.given()).isEqualTo(4);
    }

    @Test
    void whatFollowsFromTheValuesIsTold() {
        Identification found = Measured.nothing()
                .with(Measurand.DOT_CLOCK, "14750000", 0)
                .with(Measurand.FIELD_RATE, "50", 0)
                .count(Measurand.DOTS_PER_LINE, "944")
                .identified();
        // Common practice: 14.75 MHz is 944 samples of 15 625 Hz; 312.5 lines of a field.
        assertThat(derived(found, Measurand.LINE_RATE).value()).isEqualTo(Bounds.exactly(Rational.of(15_625)));
        assertThat(derived(found, Measurand.LINE_RATE).from()).containsExactly("dotClockHz", "dotsPerLine");
        assertThat(derived(found, Measurand.LINES_PER_FIELD).value())
                .isEqualTo(Bounds.exactly(Rational.parse("625/2")));
        assertThat(found.derived()).hasSize(2);
        assertTiming(found.candidates().get(0), "14750000", "944", "625/2");
    }

    @Test
    void theFieldRateTellsTheLineCountsOfTheStandardLineApart() {
        // SMPTE 170M: 15 734.27 Hz. CTA-861-I table 1: 60.054 Hz of 262 lines, 59.94 of 262.5, 59.826 of 263.
        Measured line = Measured.nothing().with(Measurand.LINE_RATE, "15734.27", 20);
        Open lines = line.identified().open().stream()
                .filter(one -> one.member().equals("linesPerField"))
                .findFirst()
                .orElseThrow();
        assertThat(lines.values()).containsExactly("262", "525/2", "263");
        assertThat(line.identified().candidates().get(0).bases().linesPerField())
                .isEqualTo(Basis.ASSUMED);
        for (Map.Entry<String, String> rate :
                Map.of("60.054", "262", "59.940", "525/2", "59.826", "263").entrySet()) {
            Identification found =
                    line.with(Measurand.FIELD_RATE, rate.getKey(), 20).identified();
            assertThat(found.candidates())
                    .isNotEmpty()
                    .allSatisfy(candidate ->
                            assertThat(candidate.timing().linesPerField()).isEqualTo(Rational.parse(rate.getValue())));
            assertThat(found.open()).extracting(Open::member).doesNotContain("fieldRateHz", "linesPerField", "scan");
        }
    }

    @Test
    void lineRatesThatTheToleranceDoesNotTellApartStayOpen() {
        // Arithmetic: 6/5 · 4.43361875 MHz / 340.5 = 15 625.088 Hz, 5.64 ppm above 15 625 Hz.
        Measured lines = Measured.nothing().count(Measurand.LINES_PER_FIELD, "312");
        Open open = lines.with(Measurand.LINE_RATE, "15625", 100).identified().open().stream()
                .filter(one -> one.member().equals("lineRateHz"))
                .findFirst()
                .orElseThrow();
        assertThat(open.values()).contains("15625", "3546895/227");
        assertThat(open.closestPpm().toDouble()).isBetween(5.63, 5.65);
        assertThat(lines.with(Measurand.LINE_RATE, "15625", 5).identified().candidates())
                .isNotEmpty()
                .allMatch(candidate -> candidate.timing().lineRate().hz().equals(Rational.of(15_625)));
    }

    @Test
    void theCountedDotsChooseAmongTheClocksOfOneLine() {
        // Arithmetic: lines of 228 subcarrier cycles; 256 dots of 3/2 and 320 of 15/8 each take 47.68 µs of about 52.
        Measured line =
                Measured.nothing().with(Measurand.LINE_RATE, "15699.76", 20).count(Measurand.LINES_PER_FIELD, "262");
        assertTiming(line.active(256, 224).identified().candidates().get(0), "59062500/11", "342", "262");
        Identification found = line.active(320, 224).identified();
        assertTiming(found.candidates().get(0), "73828125/11", "855/2", "262");
        assertThat(found.candidates().get(0).usualWidth()).isTrue();
        // 320 of 342 dots leave 22 for sync: 4.1 µs, less than the 4.7 of the standards.
        assertThat(found.candidates())
                .noneMatch(candidate -> candidate.timing().dotsPerLine().equals(Rational.of(342)));
    }

    @Test
    void aLineRateOfTwiceTheStandardIsAFullHeightPicture() {
        // CTA-861-I table 1, VIC 2: 31.469 kHz, 59.94 Hz, 858 × 525, 27 MHz.
        Candidate best = Measured.nothing()
                .with(Measurand.LINE_RATE, "31469", 50)
                .with(Measurand.FIELD_RATE, "59.94", 50)
                .identified()
                .candidates()
                .get(0);
        assertTiming(best, "27000000", "858", "525");
        assertThat(best.timing().lineStandard()).isEqualTo(LineStandard.L525_60);
    }

    @Test
    void aLineThatNoClassHasIsComposedFromAKnownClock() {
        // Arithmetic: 6/5 · 4.43361875 MHz = 5 320 342.5 Hz; / 342 = 15 556.557 Hz; / 312 = 49.8608 Hz.
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15556.56", 20)
                .count(Measurand.DOTS_PER_LINE, "342")
                .with(Measurand.FIELD_RATE, "49.8608", 20)
                .identified();
        Candidate best = found.candidates().get(0);
        assertTiming(best, "10640685/2", "342", "312");
        assertThat(best.kind()).isEqualTo(Kind.COMPOSED);
        assertThat(best.known()).isNull();
        assertThat(best.clock()).isEqualTo(new DotClock(DotClock.Reference.SUBCARRIER_625, Rational.parse("6/5")));
        assertThat(found.fitting()).isEqualTo(1);
    }

    @Test
    void aLineRateOfNoClassFindsClocksWithoutAnyDotsMeasured() {
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15556.56", 20)
                .count(Measurand.LINES_PER_FIELD, "312")
                .identified();
        assertThat(found.candidates())
                .allMatch(candidate -> candidate.kind() == Kind.COMPOSED)
                .anySatisfy(candidate -> assertTiming(candidate, "10640685/2", "342", "312"));
        assertThat(found.candidates().get(0).bases().dotClock()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void aVagueLineRateOfNoClassFindsNothing() {
        // 16 500 Hz ± 2 % would fit some number of dots of every clock.
        Identification found =
                Measured.nothing().with(Measurand.LINE_RATE, "16500", 20_000).identified();
        assertThat(found.fitting()).isZero();
        assertThat(found.candidates()).isEmpty();
    }

    @Test
    void anUnusualLineCountIsTakenAsItWasMeasured() {
        Candidate best = Measured.nothing()
                .with(Measurand.DOT_CLOCK, "7159090", 20)
                .count(Measurand.DOTS_PER_LINE, "456")
                .count(Measurand.LINES_PER_FIELD, "264")
                .identified()
                .candidates()
                .get(0);
        // SMPTE 170M: 2 · 3 579 545 Hz.
        assertTiming(best, "78750000/11", "456", "264");
        assertThat(best.kind()).isEqualTo(Kind.COMPOSED);
        assertThat(best.timing().lineStandard()).isEqualTo(LineStandard.L525_60);
    }

    @Test
    void valuesWithoutBroadcastKinshipAreGivenBackAsTheyAre() {
        // VESA DMT 1.13, 0x04: 25.175 MHz, 800 × 525, 59.940 Hz.
        Identification found = Measured.nothing()
                .with(Measurand.DOT_CLOCK, "25175000", 50)
                .count(Measurand.DOTS_PER_LINE, "800")
                .count(Measurand.LINES_PER_FIELD, "525")
                .identified();
        assertThat(found.fitting()).isZero();
        assertThat(found.open()).isEmpty();
        Candidate best = found.candidates().get(0);
        assertThat(best.kind()).isEqualTo(Kind.AS_MEASURED);
        assertTiming(best, "25175000", "800", "525");
        assertThat(best.bases().dotClock()).isEqualTo(Basis.MEASURED);
        assertThat(best.bases().lineStandard()).isEqualTo(Basis.ASSUMED);
        assertThat(best.clock()).isNull();
        // What comes nearest explains the lines alone, and says so.
        assertThat(found.candidates().subList(1, found.candidates().size()))
                .isNotEmpty()
                .allSatisfy(
                        candidate -> assertThat(candidate.unexplained()).containsExactly("dotsPerLine", "dotClockHz"));
    }

    @Test
    void aClockAndADotCountOfNoKinshipGiveTheClockThatFollows() {
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "31000", 0)
                .count(Measurand.DOTS_PER_LINE, "800")
                .with(Measurand.FIELD_RATE, "60", 20_000)
                .identified();
        // 31 000 Hz over 58.8 to 61.2 Hz is 506 to 527 lines: no single count.
        assertThat(found.candidates()).noneMatch(candidate -> candidate.kind() == Kind.AS_MEASURED);
        Candidate best = Measured.nothing()
                .with(Measurand.LINE_RATE, "31000", 0)
                .count(Measurand.DOTS_PER_LINE, "800")
                .with(Measurand.FIELD_RATE, "59.0476", 100)
                .identified()
                .candidates()
                .get(0);
        // 31 000 · 800 = 24 800 000; 31 000 / 59.0476 = 525.0.
        assertThat(best.kind()).isEqualTo(Kind.AS_MEASURED);
        assertTiming(best, "24800000", "800", "525");
        assertThat(best.bases().dotClock()).isEqualTo(Basis.COMPUTED);
        assertThat(best.bases().linesPerField()).isEqualTo(Basis.COMPUTED);
    }

    @Test
    void whatExplainsMostComesFirstWhereNothingExplainsAll() {
        // A line rate 300 ppm beside the standard's, whose tolerance is smaller, and 59.94 fields.
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15739", 1)
                .count(Measurand.LINES_PER_FIELD, "525/2")
                .count(Measurand.DOTS_PER_LINE, "858")
                .identified();
        assertThat(found.fitting()).isZero();
        List<Candidate> nearest = found.candidates().stream()
                .filter(candidate -> candidate.kind() != Kind.AS_MEASURED)
                .toList();
        assertTiming(nearest.get(0), "13500000", "858", "525/2");
        assertThat(nearest.get(0).unexplained()).containsExactly("lineRateHz");
        assertThat(nearest.get(0).bases().dotsPerLine()).isEqualTo(Basis.MEASURED);
    }

    @Test
    void aFieldOf288DrawnLinesIsNotOf262() {
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15680", 5000)
                .active(null, 288)
                .identified();
        assertThat(found.candidates())
                .isNotEmpty()
                .allMatch(candidate -> candidate.timing().lineStandard() == LineStandard.L625_50);
    }

    @Test
    void aRangeCountsAtBothOfItsEnds() {
        // CTA-861-I table 1: 312, 313 or 314 lines.
        Measured line = Measured.nothing().with(Measurand.LINE_RATE, "15625", 1);
        assertThat(line.with(Measurand.LINES_PER_FIELD, Bounds.between(Rational.of(313), Rational.of(314)))
                        .identified()
                        .candidates())
                .extracting(candidate -> candidate.timing().linesPerField())
                .containsOnly(Rational.of(313), Rational.of(314));
    }

    @Test
    void aCountThatARangeLeavesOpenIsAssumed() {
        // CTA-861-I table 1: 312, 313 or 314 lines.
        Identification found = Measured.nothing()
                .with(Measurand.LINE_RATE, "15625", 1)
                .with(Measurand.LINES_PER_FIELD, Bounds.between(Rational.of(312), Rational.of(314)))
                .identified();
        assertThat(found.candidates().get(0).bases().linesPerField()).isEqualTo(Basis.ASSUMED);
    }

    @Test
    void nothingIsComposedFarFromTheStandardLines() {
        // 50 kHz would be 270 dots of 13.5 MHz, which no broadcast equipment has (5 % of the line rates: assumption).
        assertThat(Measured.nothing()
                        .with(Measurand.LINE_RATE, "50000", 10)
                        .identified()
                        .candidates())
                .isEmpty();
        assertThat(Measured.nothing()
                        .count(Measurand.DOTS_PER_LINE, "30000")
                        .identified()
                        .candidates())
                .isEmpty();
    }

    @Test
    void atLeastOneRateOrCountIsNeeded() {
        assertThatThrownBy(() -> Measured.nothing().scan(Scan.PROGRESSIVE).timing())
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static Derived derived(Identification found, Measurand measurand) {
        return found.derived().stream()
                .filter(derived -> derived.measurand() == measurand)
                .findFirst()
                .orElseThrow();
    }

    private static Candidate.Deviation deviation(Candidate candidate, Measurand measurand) {
        return candidate.deviations().stream()
                .filter(deviation -> deviation.measurand() == measurand)
                .findFirst()
                .orElseThrow();
    }

    private static void assertTiming(Candidate candidate, String clockHz, String dots, String lines) {
        assertThat(candidate.timing())
                .isEqualTo(new SourceTiming(Frequency.parseHz(clockHz), Rational.parse(dots), Rational.parse(lines)));
    }
}
