package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/** Detailed timing descriptors: E-EDID tables 3.21 and 3.22, CTA-861-I §7.2.1. */
class DetailedTimingTest {
    /** The descriptor of VIC 16 without its size, from which single bytes are changed. */
    private static final String VIC_16 = "023A801871382D40582C450000000000001E";

    @ParameterizedTest
    @CsvSource({
        // The usual descriptors of consumer timings (bytes from memory); what they must give is CTA-861-I table 1.
        "023A801871382D40582C450000000000001E, 16",
        "011D007251D01E206E28550000000000001E, 4",
        "011D00BC52D01E20B8285540000000000 01E, 19",
        "011D8018711C1620582C250000000000009E, 5",
        "011D80D0721C1620102C258000000000009E, 20",
        "8C0AD08A20E02D10103E9600000000000018, 2",
        "8C0AD0902040312 00C405500000000000018, 17",
        "8C0AA01451F01600267C4300000000000098, 6",
        "8C0AA02051201810187E2300000000000098, 21"
    })
    void aPublishedDescriptorGivesThePublishedTiming(String hex, int vic) {
        assertThat(read(hex.replace(" ", ""))).isEqualTo(vic(vic));
    }

    @Test
    void everyTimingOfCta861ThatFitsADescriptorComesBackExactly() {
        // 12-bit counts and a clock of whole 10 kHz up to 655.35 MHz (E-EDID table 3.21).
        int compared = 0;
        for (VideoTiming published : Cta861.all()) {
            RasterTiming timing = published.timing();
            boolean fits = timing.pixelClock().compareTo(Frequency.ofHz(655_350_000)) <= 0
                    && timing.pixelClock().dividedBy(Rational.of(10_000)).hz().isWhole()
                    && timing.horizontalActive() <= 4095
                    && timing.horizontalTotal() - timing.horizontalActive() <= 4095
                    && timing.horizontalFrontPorch() <= 1023
                    && timing.verticalFrontPorch() <= 63;
            if (fits) {
                EdidReading reading = EdidReader.read(
                        EdidBuilder.digital(4).detailed(timing, 885, 498).build());
                assertThat(reading.findTiming("detailed:1").orElseThrow().timing())
                        .as("VIC %d", published.vic())
                        .isEqualTo(timing);
                assertThat(reading.defects()).isEmpty();
                compared++;
            }
        }
        // By table 1, 62 do not fit: VIC 1 and 89 are no whole 10 kHz, the others have a front porch above 1023 pixels,
        // 4096
        // active pixels and more, or a clock above 655.35 MHz.
        assertThat(compared).isEqualTo(154 - 62);
    }

    @Test
    void anInterlacedDescriptorCountsOneFieldAndTheFrameHasOneLineMore() {
        // CTA-861-I §7.2.1: 240 active and 22 blank lines stand for fields of 262 and 263 lines.
        RasterTiming timing = read("8C0AA01451F01600267C4300000000000098");
        assertThat(timing.scan()).isEqualTo(Scan.INTERLACED);
        assertThat(timing.verticalActive()).isEqualTo(480);
        assertThat(timing.verticalTotal()).isEqualTo(525);
        assertThat(timing.fieldRate()).isEqualTo(Frequency.ofHz(60_000, 1001));
    }

    @Test
    void theTimingOfVic39HasFieldsOfWholeLines() {
        // CTA-861-I §7.2.1 names VIC 39 as the exception: 1250 lines, twice 625. One pixel more makes it another
        // timing.
        RasterTiming vic39 = vic(39);
        byte[] edid = EdidBuilder.digital(4)
                .detailed(vic39, 0, 0)
                .detailed(widerByOne(vic39), 0, 0)
                .build();
        EdidReading reading = EdidReader.read(edid);
        assertThat(reading.findTiming("detailed:1").orElseThrow().timing().verticalTotal())
                .isEqualTo(1250);
        assertThat(reading.findTiming("detailed:2").orElseThrow().timing().verticalTotal())
                .isEqualTo(1251);
    }

    @Test
    void bordersLieInsideTheActiveSignalAndCountToThePorches() {
        // E-EDID §3.12: active = border + addressable + border, one side given; 8 pixels and 4 lines here.
        RasterTiming timing = read(with(with(VIC_16, 15, 8), 16, 4));
        assertThat(timing.horizontalActive()).isEqualTo(1904);
        assertThat(timing.horizontalFrontPorch()).isEqualTo(96);
        assertThat(timing.horizontalBackPorch()).isEqualTo(156);
        assertThat(timing.horizontalTotal()).isEqualTo(2200);
        assertThat(timing.verticalActive()).isEqualTo(1072);
        assertThat(timing.verticalFrontPorch()).isEqualTo(8);
        assertThat(timing.verticalBackPorch()).isEqualTo(40);
        assertThat(timing.verticalTotal()).isEqualTo(1125);
        assertThat(timing.fieldRate()).isEqualTo(Frequency.ofHz(60));
    }

    @ParameterizedTest
    @CsvSource({
        // E-EDID table 3.22, byte 17: bits 4–3 = 11 separate (2 vertical, 1 horizontal), 10 composite (1 its polarity),
        // 0x analog, whose sync is the negative tip.
        "0x18, NEGATIVE, NEGATIVE",
        "0x1A, POSITIVE, NEGATIVE",
        "0x1C, NEGATIVE, POSITIVE",
        "0x1E, POSITIVE, POSITIVE",
        "0x10, NEGATIVE, NEGATIVE",
        "0x12, POSITIVE, POSITIVE",
        "0x14, NEGATIVE, NEGATIVE",
        "0x00, NEGATIVE, NEGATIVE",
        "0x06, NEGATIVE, NEGATIVE",
        "0x0E, NEGATIVE, NEGATIVE"
    })
    void polaritiesFollowTheKindOfSync(String flags, Polarity horizontal, Polarity vertical) {
        RasterTiming timing = read(with(VIC_16, 17, Integer.decode(flags)));
        assertThat(timing.horizontalPolarity()).isEqualTo(horizontal);
        assertThat(timing.verticalPolarity()).isEqualTo(vertical);
    }

    @Test
    void highBitsReachTheirFields() {
        // E-EDID table 3.21: bytes 4, 7 and 11 hold the high bits; clock FFFFh is 655.35 MHz.
        // Active 2730 (AAAh), blanking 1365 (555h), porch 682 (2AAh), sync 341 (155h); 2457 (999h), 1638 (666h), 42,
        // 21.
        String hex = "FFFF" + "AA55A5" + "996696" + "AA55" + "A5" + "99" + "000000" + "0000" + "1E";
        RasterTiming timing = read(hex);
        assertThat(timing.pixelClock()).isEqualTo(Frequency.ofHz(655_350_000));
        assertThat(timing.horizontalActive()).isEqualTo(2730);
        assertThat(timing.horizontalTotal()).isEqualTo(2730 + 1365);
        assertThat(timing.horizontalFrontPorch()).isEqualTo(682);
        assertThat(timing.horizontalSync()).isEqualTo(341);
        assertThat(timing.verticalActive()).isEqualTo(2457);
        assertThat(timing.verticalTotal()).isEqualTo(2457 + 1638);
        assertThat(timing.verticalFrontPorch()).isEqualTo(42);
        assertThat(timing.verticalSync()).isEqualTo(21);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                // no active pixels; no active lines; porch and sync longer than the blanking; no sync either way;
                // borders that leave nothing; filler
                "023A001801382D40582C450000000000001E",
                "023A801871002D00582C450000000000001E",
                "023A801071382D40FF2C458000000000001E",
                "023A801871380540582C450000000000001E",
                "023A801871382D405800450000000000001E",
                "023A801871382D40582C400000000000001E",
                "023A20180038002D582C45000000000010FF",
                "FFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF",
                "010101010101010101010101010101010101"
            })
    void countsThatNoRasterCanHaveAreADefect(String hex) {
        EdidReading reading = EdidReader.read(
                EdidBuilder.digital(3).descriptor(HexFormat.of().parseHex(hex)).build());
        assertThat(reading.timings()).isEmpty();
        assertThat(reading.defects()).singleElement().satisfies(defect -> {
            assertThat(defect.code()).isEqualTo(DefectCode.DETAILED_TIMING_IMPOSSIBLE);
            assertThat(defect.blockIndex()).isZero();
            assertThat(defect.byteOffset()).isEqualTo(0x36);
        });
    }

    @Test
    void theFirstDetailedTimingIsPreferredAndNumberingRunsThroughAllBlocks() {
        // E-EDID table 5.1: preferred, then base block, then extensions.
        EdidReading reading = EdidReader.read(EdidBuilder.digital(4)
                .name("Lowick 40")
                .detailed(vic(16), 885, 498)
                .detailed(vic(4), 885, 498)
                .extension(new CtaBuilder().detailed(vic(2), 885, 498))
                .build());
        assertThat(reading.timings().stream().map(AcceptedTiming::label))
                .containsExactly("detailed:1", "detailed:2", "detailed:3");
        assertThat(reading.timings().stream().map(AcceptedTiming::preferred)).containsExactly(true, false, false);
        assertThat(reading.preferredTiming().orElseThrow().timing()).isEqualTo(vic(16));
    }

    @Test
    void nativeDetailedTimingsAreCountedFromTheFirst() {
        // CTA-861-I table 60, byte 3 bits 3–0; E-EDID table 3.14 bit 1 for the first alone.
        EdidReading counted = EdidReader.read(EdidBuilder.digital(3)
                .detailed(vic(16), 0, 0)
                .detailed(vic(4), 0, 0)
                .extension(new CtaBuilder().flags(0x02).detailed(vic(2), 0, 0))
                .build());
        assertThat(counted.timings().stream().map(AcceptedTiming::nativeFormat)).containsExactly(true, true, false);
        EdidReading byFeature = EdidReader.read(EdidBuilder.digital(4)
                .features(0x02)
                .detailed(vic(16), 0, 0)
                .detailed(vic(4), 0, 0)
                .build());
        assertThat(byFeature.timings().stream().map(AcceptedTiming::nativeFormat))
                .containsExactly(true, false);
    }

    static RasterTiming vic(int vic) {
        return Cta861.find(vic).orElseThrow().timing();
    }

    private static RasterTiming read(String hex) {
        EdidReading reading = EdidReader.read(
                EdidBuilder.digital(3).descriptor(HexFormat.of().parseHex(hex)).build());
        assertThat(reading.defects()).isEmpty();
        List<AcceptedTiming> timings = reading.timings();
        assertThat(timings).hasSize(1);
        return timings.get(0).timing();
    }

    private static String with(String hex, int offset, int value) {
        return hex.substring(0, 2 * offset) + String.format("%02X", value) + hex.substring(2 * offset + 2);
    }

    private static RasterTiming widerByOne(RasterTiming timing) {
        return new RasterTiming(
                timing.pixelClock(),
                timing.horizontalActive() + 1,
                timing.horizontalFrontPorch(),
                timing.horizontalSync(),
                timing.horizontalBackPorch(),
                timing.verticalActive(),
                timing.verticalFrontPorch(),
                timing.verticalSync(),
                timing.verticalBackPorch(),
                timing.verticalTotal(),
                timing.scan(),
                timing.horizontalPolarity(),
                timing.verticalPolarity());
    }
}
