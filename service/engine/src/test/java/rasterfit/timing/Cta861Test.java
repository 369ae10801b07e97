package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Our table against CTA-861-I tables 1 and 2, carried over; and against the shared reference where it is there. */
class Cta861Test {
    private static final Rational HALF_A_MICROHERTZ = Rational.of(1, 2_000_000);
    private static final Rational HALF_A_HERTZ = Rational.HALF;

    @Test
    void everyTimingIsThatOfTable1() {
        assertAllAreThoseOfTable1(Tables.carriedOver("/rasterfit/timing/cta-861-i-table-1.tsv"));
    }

    @Test
    void everyTimingIsThatOfTheSharedReference() {
        assertAllAreThoseOfTable1(Tables.shared("reference/vics.tsv"));
    }

    @Test
    void everyVariantIsThatOfTable1() {
        assertAllVariantsAreThoseOfTable1(Tables.carriedOver("/rasterfit/timing/cta-861-i-table-1-variants.tsv"));
    }

    @Test
    void everyVariantIsThatOfTheSharedReference() {
        assertAllVariantsAreThoseOfTable1(Tables.shared("reference/vic_variants.tsv"));
    }

    @Test
    void everyAspectIsThatOfTable2() {
        assertAllAspectsAreThoseOfTable2(Tables.carriedOver("/rasterfit/timing/cta-861-i-table-2.tsv"));
    }

    @Test
    void everyAspectIsThatOfTheSharedReference() {
        assertAllAspectsAreThoseOfTable2(Tables.shared("reference/vic_aspect.tsv"));
    }

    @Test
    void everyPairOfRatesIsThatOfTable2() {
        for (Map<String, String> row : Tables.carriedOver("/rasterfit/timing/cta-861-i-table-2.tsv")) {
            VideoTiming timing = Cta861.find(Integer.parseInt(row.get("vic"))).orElseThrow();
            String[] printed = row.get("field_rate").replace("Hz", "").split("/", -1);
            List<Frequency> rates = new ArrayList<>(List.of(timing.timing().fieldRate()));
            if (timing.otherPixelClock() != null) {
                rates.add(timing.timing().atPixelClock(timing.otherPixelClock()).fieldRate());
            }
            rates.sort(Frequency::compareTo);
            assertThat(rates).as("VIC %d", timing.vic()).hasSameSizeAs(printed);
            for (int i = 0; i < printed.length; i++) {
                // Table 2 names the family of a rate: 262 lines at 15.734 kHz run at 60.054 Hz but read 59.94.
                Rational tolerance = Rational.of(1, 400).times(rates.get(i).hz());
                assertThat(rates.get(i).hz().minus(Rational.parse(printed[i])).abs())
                        .as("VIC %d at %s Hz", timing.vic(), printed[i])
                        .isLessThan(tolerance);
            }
        }
    }

    @Test
    void thePairOfClocksDiffersByTheFactorOfSection4() {
        for (VideoTiming timing : Cta861.all()) {
            Frequency other = timing.otherPixelClock();
            if (other == null) {
                continue;
            }
            Rational ratio = other.ratioTo(timing.timing().pixelClock());
            if (timing.vic() == 1) {
                // Table 1 note c: 25.2 MHz beside the printed 25.175 MHz, exactly 60 Hz.
                assertThat(other).isEqualTo(Frequency.ofHz(25_200_000));
                assertThat(timing.timing().atPixelClock(other).fieldRate()).isEqualTo(Frequency.ofHz(60));
            } else {
                assertThat(ratio).as("VIC %d", timing.vic()).isIn(Rational.of(1000, 1001), Rational.of(1001, 1000));
            }
        }
    }

    @Test
    void aListed1080p60StandsForBothOfItsRates() {
        // CTA-861-I table 1: VIC 16 at 148.5 and 148.352 MHz; §4: a sink that lists one accepts both.
        List<RasterTiming> accepted = Cta861.find(16).orElseThrow().acceptedRasters();
        assertThat(accepted.stream().map(timing -> timing.fieldRate().hz()))
                .containsExactly(Rational.of(60), Rational.of(60_000, 1001));
    }

    @Test
    void aListed288LineTimingStandsForThreeTotalsAtOneRate() {
        // CTA-861-I table 1 and §4: 312, 313 and 314 lines; 50 Hz has no kin at 1/1.001.
        List<RasterTiming> accepted = Cta861.find(23).orElseThrow().acceptedRasters();
        assertThat(accepted.stream().map(RasterTiming::verticalTotal)).containsExactly(312, 313, 314);
    }

    @Test
    void onlyVic1IsNotAConsumerFormat() {
        // CTA-861-I §5 and table 1.
        assertThat(Cta861.all().stream().filter(timing -> !timing.isCeFormat()).map(VideoTiming::vic))
                .containsExactly(1);
    }

    @Test
    void theListIsCompleteAndAscending() {
        // CTA-861-I table 1: 1 to 127 and 193 to 219; the rest is reserved or forbidden.
        List<Integer> vics = Cta861.all().stream().map(VideoTiming::vic).toList();
        assertThat(vics).hasSize(154).isSorted().startsWith(1).endsWith(219);
        assertThat(List.of(-1, 0, 128, 192, 220, 255, 256))
                .allSatisfy(vic -> assertThat(Cta861.find(vic)).isEmpty());
    }

    @Test
    void thePrintedPixelAspectFollowsFromGeometryButForTwoRows() {
        for (VideoTiming timing : Cta861.all()) {
            Rational printed = timing.pixelAspects().get(0);
            Rational geometry =
                    timing.sampleAspect().times(timing.pixelRepetitions().get(0));
            // Table 2 prints 2:15 for VIC 25 and 1:15 for VIC 27, half of 4/3 · 576/2880 and of 4/3 · 288/2880, while
            // its
            // rows for the same rasters at 16:9 (26 and 28) follow the geometry.
            boolean isHalved = timing.vic() == 25 || timing.vic() == 27;
            assertThat(isHalved ? printed.times(2) : printed)
                    .as("VIC %d", timing.vic())
                    .isEqualTo(geometry);
        }
    }

    @Test
    void theFourHdmiVicsHaveTheirPublishedRasters() {
        // HDMI 1.4, the numbers of the project's reference: total, front porch, sync, back porch, rate.
        int[][] published = {
            {1, 3840, 4400, 176, 88, 296, 30}, {2, 3840, 5280, 1056, 88, 296, 25},
            {3, 3840, 5500, 1276, 88, 296, 24}, {4, 4096, 5500, 1020, 88, 296, 24}
        };
        for (int[] row : published) {
            RasterTiming timing = HdmiVideo.find(row[0]).orElseThrow().timing();
            assertThat(timing.horizontalActive()).isEqualTo(row[1]);
            assertThat(timing.horizontalTotal()).isEqualTo(row[2]);
            assertThat(timing.horizontalFrontPorch()).isEqualTo(row[3]);
            assertThat(timing.horizontalSync()).isEqualTo(row[4]);
            assertThat(timing.horizontalBackPorch()).isEqualTo(row[5]);
            assertThat(timing.verticalActive()).isEqualTo(2160);
            assertThat(timing.verticalTotal()).isEqualTo(2250);
            assertThat(timing.pixelClock()).isEqualTo(Frequency.ofHz(297_000_000));
            assertThat(timing.fieldRate()).isEqualTo(Frequency.ofHz(row[6]));
        }
        assertThat(HdmiVideo.find(0)).isEmpty();
        assertThat(HdmiVideo.find(5)).isEmpty();
    }

    @Test
    void theHdmiVicsAreThoseOfTheSharedReference() {
        for (Map<String, String> row : Tables.shared("reference/hdmi_vics.tsv")) {
            VideoTiming timing =
                    HdmiVideo.find(Integer.parseInt(row.get("hdmi_vic"))).orElseThrow();
            assertIsThatOf(row, timing);
        }
    }

    private static void assertAllAreThoseOfTable1(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(154);
        assertThat(rows.stream().map(row -> Integer.valueOf(row.get("vic"))))
                .containsExactlyElementsOf(
                        Cta861.all().stream().map(VideoTiming::vic).toList());
        for (Map<String, String> row : rows) {
            assertIsThatOf(row, Cta861.find(Integer.parseInt(row.get("vic"))).orElseThrow());
        }
    }

    private static void assertIsThatOf(Map<String, String> row, VideoTiming published) {
        RasterTiming ours = published.timing();
        RasterTiming expected = new RasterTiming(
                Frequency.parseHz(row.get("pixclk_hz")),
                number(row, "w"),
                number(row, "hfp"),
                number(row, "hsync"),
                number(row, "hbp"),
                number(row, "h"),
                number(row, "vfp"),
                number(row, "vsync"),
                number(row, "vbp"),
                number(row, "vtotal_frame"),
                row.get("scan").equals("i") ? Scan.INTERLACED : Scan.PROGRESSIVE,
                polarity(row.get("hpol")),
                polarity(row.get("vpol")));
        assertThat(ours).as("%s", row).isEqualTo(expected);
        assertThat(ours.horizontalTotal()).as("%s", row).isEqualTo(number(row, "htotal"));
        assertThat(ours.fieldRate()
                        .hz()
                        .minus(Rational.parse(row.get("rate_hz")))
                        .abs())
                .as("%s", row)
                .isLessThanOrEqualTo(HALF_A_MICROHERTZ);
        assertThat(ours.lineRate()
                        .hz()
                        .minus(Rational.parse(row.get("hfreq_khz")).times(1000))
                        .abs())
                .as("%s", row)
                .isLessThanOrEqualTo(HALF_A_HERTZ);
        assertThat(published.pictureAspect()).as("%s", row).isEqualTo(ratio(row.get("aspect")));
        // A field of half a line more (vhalf) is what makes an interlaced total odd.
        boolean endsOnHalfLine = ours.verticalTotal() % 2 == 1 && ours.scan() == Scan.INTERLACED;
        assertThat(endsOnHalfLine).as("%s", row).isEqualTo(row.get("vhalf").equals("0.5"));
    }

    private static void assertAllVariantsAreThoseOfTable1(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(10);
        int variants = 0;
        for (Map<String, String> row : rows) {
            for (String vic : row.get("vics").split(",", -1)) {
                VideoTiming timing = Cta861.find(Integer.parseInt(vic)).orElseThrow();
                RasterTiming ours = timing.variants().stream()
                        .filter(variant -> variant.verticalTotal() == number(row, "vtotal"))
                        .findFirst()
                        .orElseThrow();
                assertThat(ours.verticalFrontPorch()).as("%s", row).isEqualTo(number(row, "vfp"));
                assertThat(ours.verticalSync()).as("%s", row).isEqualTo(number(row, "vsync"));
                assertThat(ours.verticalBackPorch()).as("%s", row).isEqualTo(number(row, "vbp"));
                assertThat(ours.verticalTotal() - ours.verticalActive())
                        .as("%s", row)
                        .isEqualTo(number(row, "vblank"));
                assertThat(ours.pixelClock()).as("%s", row).isEqualTo(Frequency.parseHz(row.get("pixclk_hz")));
                assertThat(ours.horizontalTotal()).as("%s", row).isEqualTo(number(row, "htotal"));
                assertThat(ours.fieldRate()).as("%s", row).isEqualTo(Frequency.parseHz(row.get("rate_exact")));
                variants++;
            }
        }
        // Nothing else has variants: 154 timings, 8 of them with 20 rasters between them.
        assertThat(variants).isEqualTo(20);
        assertThat(Cta861.all().stream()
                        .mapToInt(timing -> timing.variants().size())
                        .sum())
                .isEqualTo(154 - 8 + 20);
    }

    private static void assertAllAspectsAreThoseOfTable2(List<Map<String, String>> rows) {
        assertThat(rows).hasSize(154);
        for (Map<String, String> row : rows) {
            VideoTiming timing = Cta861.find(Integer.parseInt(row.get("vic"))).orElseThrow();
            assertThat(timing.pictureAspect()).as("%s", row).isEqualTo(ratio(row.get("picture_aspect")));
            assertThat(timing.pixelAspects()).as("%s", row).isEqualTo(pixelAspects(row.get("pixel_aspect")));
        }
    }

    /** {@code 8:9}; {@code 2:9 - 20:9}, a range over 1 to 10 repetitions; {@code 2:9, 4:9, or 8:9}, one after another. */
    private static List<Rational> pixelAspects(String printed) {
        String[] ends = printed.split("\\s*[–-]\\s*", -1);
        List<Rational> aspects = new ArrayList<>();
        if (ends.length == 2) {
            for (int repetition = 1; repetition <= 10; repetition++) {
                aspects.add(ratio(ends[0]).times(repetition));
            }
            assertThat(aspects.get(9)).isEqualTo(ratio(ends[1]));
        } else {
            for (String aspect : printed.split("[ ,]+|or", -1)) {
                if (!aspect.isBlank()) {
                    aspects.add(ratio(aspect));
                }
            }
        }
        return aspects;
    }

    private static int number(Map<String, String> row, String column) {
        return Integer.parseInt(row.get(column));
    }

    private static Polarity polarity(String letter) {
        return letter.equals("P") ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }

    private static Rational ratio(String printed) {
        return Rational.parse(printed.trim().replace(':', '/'));
    }
}
