package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.edid.VideoCapability.Scan;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;

/** Extension blocks: how many there are, what a block of further timings holds, and what CTA-861 says beside timings. */
class ExtensionsTest {
    @ParameterizedTest
    @CsvSource({
        // CTA-861-I §7.5.6: bit 7 YCbCr range, bit 6 RGB range, bits 5–4 preferred, 3–2 computer, 1–0 video formats.
        "0x40, true, false, NOT_STATED, NOT_STATED, NOT_STATED",
        "0x80, false, true, NOT_STATED, NOT_STATED, NOT_STATED",
        "0x1B, false, false, ALWAYS_OVERSCANNED, ALWAYS_UNDERSCANNED, BOTH",
        "0x2D, false, false, ALWAYS_UNDERSCANNED, BOTH, ALWAYS_OVERSCANNED"
    })
    void theVideoCapabilityBlockTellsRangesAndOverscan(
            String flags, boolean rgb, boolean ycc, Scan preferred, Scan computer, Scan video) {
        EdidReading reading = read(new CtaBuilder().dataBlock(7, 0, Integer.decode(flags)));
        assertThat(reading.input().capability()).isEqualTo(new VideoCapability(rgb, ycc, preferred, computer, video));
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void withoutAVideoCapabilityBlockNothingIsSaidOfIt() {
        assertThat(read(new CtaBuilder().video(16)).input().capability()).isNull();
    }

    @Test
    void theSinkCapabilityBlockStandsForTheVendorsBlock() {
        // HDMI 2.1 from memory: extended tag 121, two reserved bytes, version 1, 600 MHz in units of 5 MHz.
        EdidReading reading = read(new CtaBuilder().hdmi(340).dataBlock(7, 121, 0, 0, 1, 120, 0, 0));
        assertThat(reading.input().hdmiForum()).isEqualTo(new HdmiForumBlock(1, Frequency.ofHz(600_000_000)));
        assertThat(reading.input().maxTmdsClock()).isEqualTo(Frequency.ofHz(600_000_000));
    }

    @ParameterizedTest
    @CsvSource({"0", "120", "15"})
    void anExtendedBlockWithoutContentIsTooShortOrEmpty(int tag) {
        EdidReading reading = read(new CtaBuilder().video(16).dataBlock(7, tag));
        assertThat(reading.timings()).hasSize(1);
        List<DefectCode> expected = tag == 15 ? List.of() : List.of(DefectCode.DATA_BLOCK_TOO_SHORT);
        assertThat(reading.defects()).extracting(EdidDefect::code).containsExactlyElementsOf(expected);
    }

    @Test
    void theFirstExtensionMayOverrideTheirNumber() {
        // HDMI 2.1 from memory: byte 7Eh says 1 for readers of two blocks, extended tag 120 the true number.
        byte[] edid = EdidBuilder.digital(3)
                .extension(new CtaBuilder().dataBlock(7, 120, 3).video(16))
                .extension(new CtaBuilder().video(31))
                .extension(new CtaBuilder().video(97))
                .patch(0x7E, 1)
                .build();
        EdidReading reading = EdidReader.read(edid);
        assertThat(reading.timings()).extracting(AcceptedTiming::label).containsExactly("vic:16", "vic:31", "vic:97");
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void anOverrideThatIsWrongIsReported() {
        byte[] edid = EdidBuilder.digital(3)
                .extension(new CtaBuilder().dataBlock(7, 120, 3).video(16))
                .build();
        assertThat(EdidReader.read(edid).defects())
                .singleElement()
                .satisfies(defect -> assertThat(defect.code()).isEqualTo(DefectCode.EXTENSION_COUNT_DIFFERS));
    }

    @Test
    void all256BlocksAreRead() {
        EdidBuilder builder = EdidBuilder.digital(3);
        for (int vic = 1; vic <= 127; vic++) {
            builder.extension(new CtaBuilder().video(vic));
        }
        for (int vic = 193; vic <= 219; vic++) {
            builder.extension(new CtaBuilder().video(vic));
        }
        for (int i = 127 + 27; i < 255; i++) {
            builder.extension(
                    new CtaBuilder().detailed(Cta861.find(4).orElseThrow().timing(), 1600, 900));
        }
        byte[] edid = builder.build();
        assertThat(edid).hasSize(256 * 128);
        EdidReading reading = EdidReader.read(edid);
        assertThat(reading.defects()).isEmpty();
        assertThat(reading.timings()).hasSize(255);
        assertThat(reading.timings().stream().filter(timing -> timing.vic() != null))
                .hasSize(154);
        assertThat(reading.findTiming("detailed:101")).isPresent();
    }

    @Test
    void aBlockOfFurtherTimingsHoldsDetailedOnesCvtCodesAndStandardOnes() {
        // VESA VTB-EXT 1.0 from memory: tag 10h, version 1, the three counts, then the timings one after the other.
        RasterTiming detailed = Cta861.find(19).orElseThrow().timing();
        byte[] block = new byte[128];
        block[0] = 0x10;
        block[1] = 1;
        block[2] = 1;
        block[3] = 1;
        block[4] = 2;
        System.arraycopy(EdidBuilder.detailedDescriptor(detailed, 600, 340), 0, block, 5, 18);
        byte[] codes = {0x1B, 0x24, 0x28, (byte) 0x81, (byte) 0x80, (byte) 0xD1, (byte) 0xC0};
        System.arraycopy(codes, 0, block, 23, codes.length);
        EdidReading reading = EdidReader.read(
                EdidBuilder.digital(4).standard(640, 1, 60).extension(block).build());
        assertThat(reading.timings())
                .extracting(AcceptedTiming::label)
                .containsExactly("detailed:1", "standard:1", "standard:33", "standard:34", "cvt-code:82");
        assertThat(reading.timings().get(0).timing()).isEqualTo(detailed);
        assertThat(reading.timings().get(3).timing().horizontalActive()).isEqualTo(1920);
        assertThat(reading.timings().get(4).nominal())
                .isEqualTo(new NominalFormat(1920, 1080, rasterfit.timing.Scan.PROGRESSIVE, 60));
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void aFurtherTimingWithoutAClockIsNone() {
        // E-EDID table 3.21: a pixel clock of 0 marks something else than a detailed timing.
        byte[] block = new byte[128];
        block[0] = 0x10;
        block[1] = 1;
        block[2] = 1;
        System.arraycopy(
                EdidBuilder.detailedDescriptor(Cta861.find(19).orElseThrow().timing(), 600, 340), 2, block, 7, 16);
        EdidReading reading =
                EdidReader.read(EdidBuilder.digital(4).extension(block).build());
        assertThat(reading.timings()).isEmpty();
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void aBlockOfFurtherTimingsThatOverflowsIsLeftOut() {
        byte[] block = new byte[128];
        block[0] = 0x10;
        block[1] = 1;
        block[2] = 7; // 126 bytes
        EdidReading reading =
                EdidReader.read(EdidBuilder.digital(4).extension(block).build());
        assertThat(reading.timings()).isEmpty();
        assertThat(reading.defects())
                .singleElement()
                .satisfies(defect -> assertThat(defect.code()).isEqualTo(DefectCode.EXTENSION_LAYOUT_INVALID));
    }

    @Test
    void displayIdTimingsAreCountedThroughSectionsAndDataBlocks() {
        // DisplayID 2.0, one type VII timing in a section; then the block of CTA-861 that carries another (extended tag
        // 34).
        RasterTiming first = Cta861.find(16).orElseThrow().timing();
        RasterTiming second = Cta861.find(4).orElseThrow().timing();
        DisplayIdBuilder section =
                DisplayIdBuilder.version(0x20).block(0x22, 2, DisplayIdDescriptors.typeVii(first, 4, false));
        EdidReading reading = EdidReader.read(EdidBuilder.digital(4)
                .extension(section.build())
                .extension(new CtaBuilder()
                        .dataBlock(
                                7,
                                IntStream.concat(
                                                IntStream.of(34, 2),
                                                IntStream.of(DisplayIdDescriptors.typeVii(second, 4, false)))
                                        .toArray()))
                .build());
        assertThat(reading.timings()).extracting(AcceptedTiming::label).containsExactly("displayid:1", "displayid:2");
        assertThat(reading.timings()).extracting(AcceptedTiming::timing).containsExactly(first, second);
    }

    @Test
    void dataBlocksOfCta861InsideDisplayIdCountAsTheirOwn() {
        DisplayIdBuilder section = DisplayIdBuilder.version(0x20).block(0x81, 0, new int[] {0x42, 16, 31});
        EdidReading reading = EdidReader.read(
                EdidBuilder.digital(4).extension(section.build()).build());
        assertThat(reading.timings()).extracting(AcceptedTiming::label).containsExactly("vic:16", "vic:31");
    }

    @Test
    void rangeLimitsOfDisplayIdStandInForAMissingDescriptor() {
        // DisplayID 1.3, tag 09h: 25 to 170 MHz, 30 to 83 kHz, 48 to 75 Hz; 40h CVT.
        byte[] section = DisplayIdBuilder.version(0x12)
                .rangeLimits(2500, 17_000, 30, 83, 80, 48, 75, 20, 0x40)
                .build();
        RangeLimits limits = EdidReader.read(
                        EdidBuilder.digital(4).extension(section).build())
                .rangeLimits();
        assertThat(limits.minLineRate()).isEqualTo(Frequency.ofHz(30_000));
        assertThat(limits.maxFieldRate()).isEqualTo(Frequency.ofHz(75));
        assertThat(limits.maxPixelClock()).isEqualTo(Frequency.ofHz(170_000_000));
        assertThat(limits.formula()).isEqualTo(RangeLimits.Formula.CVT);
        RangeLimits ofDescriptor = EdidReader.read(EdidBuilder.digital(4)
                        .rangeLimits(56, 60, 30, 70, 150)
                        .extension(section)
                        .build())
                .rangeLimits();
        assertThat(ofDescriptor.maxFieldRate()).isEqualTo(Frequency.ofHz(60));
    }

    private static EdidReading read(CtaBuilder cta) {
        return EdidReader.read(EdidBuilder.digital(3).extension(cta).build());
    }
}
