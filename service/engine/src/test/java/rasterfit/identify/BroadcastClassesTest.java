package rasterfit.identify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.gear.LineStandard;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Broadcast;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** The classes of broadcast-derived timing against exact arithmetic from the standards' clocks, and CTA-861-I. */
class BroadcastClassesTest {
    @Test
    void everyRasterOfTheArithmeticTableIsAClassWithItsRates() {
        List<Map<String, String>> rows = Tables.carriedOver("/rasterfit/timing/broadcast-frame-rates.tsv");
        int checked = 0;
        for (Map<String, String> row : rows) {
            if (row.get("dots_per_line").equals("1")) {
                continue; // a bare line rate
            }
            SourceTiming timing = new SourceTiming(
                    Frequency.parseHz(row.get("dot_clock_hz")),
                    Rational.parse(row.get("dots_per_line")),
                    Rational.parse(row.get("lines_per_field")));
            assertThat(BroadcastClasses.all())
                    .as("%s", row)
                    .anySatisfy(known -> assertThat(known.timing()).isEqualTo(timing));
            assertThat(timing.lineRate()).isEqualTo(Frequency.parseHz(row.get("line_hz_exact")));
            assertThat(timing.fieldRate()).isEqualTo(Frequency.parseHz(row.get("field_hz_exact")));
            checked++;
        }
        assertThat(checked).isEqualTo(40);
    }

    @Test
    void theDotClocksAreThoseOfTheArithmeticTable() {
        Set<Frequency> printed = new HashSet<>();
        for (Map<String, String> row : Tables.carriedOver("/rasterfit/timing/broadcast-dot-clocks.tsv")) {
            printed.add(Frequency.parseHz(row.get("hz_exact")));
        }
        assertThat(DotClock.all()).extracting(DotClock::rate).containsExactlyInAnyOrderElementsOf(printed);
    }

    @Test
    void theStandardLineHasTheSamplesOfTheArithmeticTable() {
        int checked = 0;
        for (Map<String, String> row : Tables.carriedOver("/rasterfit/timing/broadcast-dot-clocks.tsv")) {
            boolean is525 = row.get("lines").equals("525");
            Frequency clock = Frequency.parseHz(row.get("hz_exact"));
            Rational samples = Rational.parse(row.get("samples_per_std_line"));
            if (!samples.times(2).isWhole()) {
                continue;
            }
            assertThat(BroadcastClasses.all()).as("%s", row).anySatisfy(known -> {
                assertThat(known.clock().rate()).isEqualTo(clock);
                assertThat(known.dotsPerLine()).isEqualTo(samples);
                assertThat(known.timing().lineRate())
                        .isEqualTo(is525 ? Broadcast.LINE_RATE_525 : Broadcast.LINE_RATE_625);
            });
            checked++;
        }
        // 525: 455/2, 273, 455, 546, 1365/2, 910, 429, 858, 780, 390, 1716; 625: 432, 864, 944, 472, 1728.
        assertThat(checked).isEqualTo(16);
    }

    @Test
    void theClassesOf27MegahertzAreTimingsOfCta861() {
        int checked = 0;
        for (BroadcastClass known : BroadcastClasses.all()) {
            SourceTiming timing = known.timing();
            if (!timing.dotClock().equals(Frequency.ofHz(27_000_000))) {
                continue;
            }
            assertThat(Cta861.all())
                    .as(known.id())
                    .anySatisfy(published ->
                            assertThat(published.variants()).anySatisfy(variant -> assertSame(variant, timing)));
            checked++;
        }
        // 262, 263 and 525/2; 312, 313, 314 and 625/2; 480 and 576 lines progressive.
        assertThat(checked).isEqualTo(9);
    }

    private static void assertSame(RasterTiming variant, SourceTiming timing) {
        assertThat(variant.pixelClock()).isEqualTo(timing.dotClock());
        assertThat(Rational.of(variant.horizontalTotal())).isEqualTo(timing.dotsPerLine());
        assertThat(Rational.of(variant.verticalTotal())).isEqualTo(timing.linesPerFrame());
        assertThat(variant.scan()).isEqualTo(timing.scan());
    }

    @Test
    void anIdIsASlugOfItsOwnThatTellsTheTiming() {
        assertThat(BroadcastClasses.all())
                .extracting(BroadcastClass::id)
                .doesNotHaveDuplicates()
                .allMatch(id -> id.matches("[a-z0-9]+(-[a-z0-9]+)*"))
                .contains(
                        "l525-p262-sc3over2-d341",
                        "l525-p262-sc15over8-d855over2",
                        "l525-i525-luma1-d858",
                        "l525-p525-luma2-d858",
                        "l625-p312-sc6over5-d341",
                        "l625-i625-square1-d944");
    }

    @Test
    void aClassIsOfTheStandardThatItsLinesSay() {
        for (BroadcastClass known : BroadcastClasses.all()) {
            assertThat(known.timing().lineStandard()).as(known.id()).isEqualTo(known.lineStandard());
            // An interlaced field ends on a half line: 525/2 and 625/2 (SMPTE 170M, ITU-R BT.1700).
            assertThat(known.timing().scan() == Scan.INTERLACED)
                    .as(known.id())
                    .isEqualTo(known.id().contains("-i"));
            assertThat(known.sources()).as(known.id()).isNotEmpty();
        }
    }

    @Test
    void theStandardLineHas455HalvesOfASubcarrierCycle() {
        // SMPTE 170M: the subcarrier is 455/2 times the line rate; ITU-R BT.1700: 1135/4 + 1/625 times.
        assertThat(cycles("l525-i525-luma1-d858")).isEqualTo(Rational.parse("455/2"));
        assertThat(cycles("l625-i625-luma1-d864")).isEqualTo(Rational.parse("709379/2500"));
        // 341 dots at 3/2: 227 1/3 (arithmetic).
        assertThat(cycles("l525-p262-sc3over2-d341")).isEqualTo(Rational.parse("682/3"));
    }

    private static Rational cycles(String id) {
        return BroadcastClasses.all().stream()
                .filter(known -> known.id().equals(id))
                .findFirst()
                .orElseThrow()
                .subcarrierCyclesPerLine();
    }

    @Test
    void aFieldFarFromBothStandardsIsOfNeither() {
        assertThat(ofLines("249")).isEqualTo(LineStandard.OTHER);
        assertThat(ofLines("250")).isEqualTo(LineStandard.L525_60);
        assertThat(ofLines("276")).isEqualTo(LineStandard.OTHER);
        assertThat(ofLines("297")).isEqualTo(LineStandard.L625_50);
    }

    private static LineStandard ofLines(String lines) {
        return new SourceTiming(Frequency.ofHz(13_500_000), Rational.of(858), Rational.parse(lines)).lineStandard();
    }
}
