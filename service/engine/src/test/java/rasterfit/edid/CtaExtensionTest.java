package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.edid.HdmiBlock.Latency;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;

/** The extension of CTA-861-I §7.3 to §7.5 and the data blocks of HDMI. */
class CtaExtensionTest {
    @Test
    void everyShortVideoDescriptorIsDecodedAsInTheStandard() {
        // CTA-861-I §7.5.1, written out here from its text: 1–64 and 65–127 are VICs, 129–192 VIC 1–64 as native,
        // 193–253
        // VICs of eight bits; 0, 128, 254 and 255 are reserved.
        for (int code = 0; code < 256; code++) {
            EdidReading reading = read(new CtaBuilder().videoBytes(code));
            boolean isReserved = code == 0 || code == 128 || code == 254 || code == 255;
            if (isReserved) {
                assertThat(reading.timings()).isEmpty();
                assertThat(codes(reading)).containsExactly(DefectCode.VIC_RESERVED);
                continue;
            }
            int vic = code > 128 && code < 193 ? code - 128 : code;
            AcceptedTiming timing = reading.timings().get(0);
            assertThat(timing.label()).isEqualTo("vic:" + vic);
            assertThat(timing.vic()).isEqualTo(vic);
            assertThat(timing.hdmiVic()).isNull();
            assertThat(timing.nativeFormat()).isEqualTo(code > 128 && code < 193);
            // CTA-861-I table 1 ends at 219.
            if (vic > 219) {
                assertThat(timing.timing()).isNull();
                assertThat(timing.acceptedRasters()).isEmpty();
                assertThat(codes(reading)).containsExactly(DefectCode.VIC_UNKNOWN);
            } else {
                assertThat(timing.timing()).isEqualTo(DetailedTimingTest.vic(vic));
                assertThat(reading.defects()).isEmpty();
            }
        }
    }

    @Test
    void vicsKeepTheirOrderAndAppearOnce() {
        EdidReading reading = read(new CtaBuilder().video(16, 4, 31).videoBytes(0x84, 2));
        assertThat(reading.timings().stream().map(AcceptedTiming::label))
                .containsExactly("vic:16", "vic:4", "vic:31", "vic:2");
        assertThat(reading.findTiming("vic:4").orElseThrow().nativeFormat()).isTrue();
    }

    @Test
    void aListed240LineTimingStandsForItsVariants() {
        // CTA-861-I §4: 262 and 263 lines, each at 27 MHz and 27.027 MHz.
        List<RasterTiming> accepted = read(new CtaBuilder().video(8))
                .findTiming("vic:8")
                .orElseThrow()
                .acceptedRasters();
        assertThat(accepted.stream().map(timing -> timing.verticalTotal() + " " + timing.pixelClock()))
                .containsExactly("262 27000000 Hz", "262 27027000 Hz", "263 27000000 Hz", "263 27027000 Hz");
    }

    @Test
    void thePictureAspectComesWithTheVic() {
        EdidReading reading = read(new CtaBuilder().video(2, 3));
        assertThat(reading.findTiming("vic:2").orElseThrow().pictureAspect()).contains(Rational.of(4, 3));
        assertThat(reading.findTiming("vic:3").orElseThrow().pictureAspect()).contains(Rational.of(16, 9));
    }

    @Test
    void flagsAreThoseOfByte3() {
        // CTA-861-I table 60.
        assertThat(read(new CtaBuilder().flags(0x80)).input().ctaFlags())
                .isEqualTo(new CtaFlags(true, false, false, false));
        assertThat(read(new CtaBuilder().flags(0x40)).input().ctaFlags())
                .isEqualTo(new CtaFlags(false, true, false, false));
        assertThat(read(new CtaBuilder().flags(0x20)).input().ctaFlags())
                .isEqualTo(new CtaFlags(false, false, true, false));
        assertThat(read(new CtaBuilder().flags(0x10)).input().ctaFlags())
                .isEqualTo(new CtaFlags(false, false, false, true));
        assertThat(read(new CtaBuilder().revision(1).flags(0xF0)).input().ctaFlags())
                .isNull();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void dataBlocksExistOnlyFromRevision3OnButDetailedTimingsAlways(int revision) {
        EdidReading reading =
                read(new CtaBuilder().revision(revision).video(16).detailed(DetailedTimingTest.vic(4), 0, 0));
        assertThat(reading.timings().stream().map(AcceptedTiming::label)).containsExactly("detailed:1");
    }

    @Test
    void aDigitalInputWithoutHdmiBlockIsDvi() {
        // HDMI 1.3a §8.3: 165 MHz, no HDMI data block, no HDMI.
        VideoInput input = read(new CtaBuilder().video(16)).input();
        assertThat(input.link()).isEqualTo(VideoLink.DVI);
        assertThat(input.hdmi()).isNull();
        assertThat(input.maxTmdsClock()).isEqualTo(Frequency.ofHz(165_000_000));
    }

    @ParameterizedTest
    @CsvSource({
        // HDMI 1.3a §8.3.2: steps of 5 MHz, 0 = not indicated; the greatest declaration counts, 165 MHz at least.
        "0, , 165",
        "150, , 165",
        "165, , 165",
        "225, , 225",
        "340, , 340",
        "300, 600, 600",
        "300, 0, 300"
    })
    void theTmdsClockIsTheGreatestDeclared(int hdmiMHz, Integer forumMHz, int effectiveMHz) {
        CtaBuilder cta = new CtaBuilder().hdmi(hdmiMHz);
        if (forumMHz != null) {
            cta.hdmiForum(forumMHz);
        }
        VideoInput input = read(cta).input();
        assertThat(input.link()).isEqualTo(VideoLink.HDMI);
        assertThat(input.maxTmdsClock()).isEqualTo(Frequency.ofHz(effectiveMHz * 1_000_000L));
        assertThat(input.hdmi().declaredMaxTmdsClock())
                .isEqualTo(hdmiMHz == 0 ? null : Frequency.ofHz(hdmiMHz * 1_000_000L));
        assertThat(input.hdmiForum() != null).isEqualTo(forumMHz != null);
    }

    @Test
    void deepColourAndDualLinkAreFlags() {
        // HDMI 1.3a table 8-6, byte 6: bit 6 48 bits, 5 36, 4 30, 3 YCbCr 4:4:4 as well, 0 dual-link DVI.
        HdmiBlock hdmi = read(new CtaBuilder().dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00, 0x69, 45))
                .input()
                .hdmi();
        assertThat(hdmi.deepColourBits()).containsExactly(36, 48);
        assertThat(hdmi.deepColourYcbcr444()).isTrue();
        assertThat(hdmi.dualLinkDvi()).isTrue();
        assertThat(hdmi.declaredMaxTmdsClock()).isEqualTo(Frequency.ofHz(225_000_000));
    }

    @Test
    void theShortestHdmiBlockDeclaresNothing() {
        // HDMI 1.3a table 8-6: length 5, identifier and address only.
        HdmiBlock hdmi = read(new CtaBuilder().dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00))
                .input()
                .hdmi();
        assertThat(hdmi).isEqualTo(new HdmiBlock(null, List.of(), false, false, null, null, List.of()));
    }

    @Test
    void latencyIsTwiceTheCodeLessOne() {
        // HDMI 1.3a table 8-6, bytes 9 to 12: 2 · (code − 1) ms; 0 unknown, 255 not supported. Byte 8 bits 7 and 6.
        HdmiBlock both = read(new CtaBuilder()
                        .dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, 0x2D, 0xC0, 46, 33, 251, 255))
                .input()
                .hdmi();
        assertThat(both.latency()).isEqualTo(new Latency(90, 64));
        assertThat(both.interlacedLatency()).isEqualTo(new Latency(500, null));
        HdmiBlock one = read(new CtaBuilder().dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, 0x2D, 0x80, 1, 0))
                .input()
                .hdmi();
        assertThat(one.latency()).isEqualTo(new Latency(0, null));
        assertThat(one.interlacedLatency()).isNull();
    }

    @Test
    void hdmiVicsAreEntriesOfTheirOwn() {
        EdidReading reading = read(new CtaBuilder().hdmiWithVics(300, 1, 4, 5, 0));
        assertThat(reading.timings().stream().map(AcceptedTiming::label))
                .containsExactly("hdmi-vic:1", "hdmi-vic:4", "hdmi-vic:5");
        AcceptedTiming first = reading.timings().get(0);
        assertThat(first.origin()).isEqualTo(TimingOrigin.HDMI_VIC);
        assertThat(first.vic()).isNull();
        assertThat(first.hdmiVic()).isEqualTo(1);
        // HDMI 1.4: HDMI VIC 1 is 3840 by 2160 at 30 Hz, the raster of VIC 95.
        assertThat(first.timing()).isEqualTo(DetailedTimingTest.vic(95));
        assertThat(reading.timings().get(2).timing()).isNull();
        assertThat(codes(reading)).containsExactly(DefectCode.VIC_UNKNOWN, DefectCode.VIC_RESERVED);
    }

    @Test
    void hdmiVicsStandBehindTheLatencies() {
        HdmiBlock hdmi = read(new CtaBuilder()
                        .dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, 0x2D, 0xE0, 46, 33, 20, 20, 0x00, 0x40, 3, 2))
                .input()
                .hdmi();
        assertThat(hdmi.latency()).isEqualTo(new Latency(90, 64));
        assertThat(hdmi.hdmiVics()).containsExactly(3, 2);
    }

    @Test
    void hdmiVicsPastTheEndOfTheBlockAreLeftOut() {
        EdidReading reading =
                read(new CtaBuilder().dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, 0x2D, 0x20, 0x00, 0x60, 1, 2));
        assertThat(reading.timings()).isEmpty();
        assertThat(codes(reading)).containsExactly(DefectCode.DATA_BLOCK_TOO_SHORT);
    }

    @Test
    void anAnalogBaseBlockWithAnHdmiBlockIsTakenForHdmi() {
        // HDMI 1.3a §8.3.3, from memory: the HDMI data block alone makes a sink an HDMI one.
        EdidReading reading = EdidReader.read(
                EdidBuilder.analog(3).extension(new CtaBuilder().hdmi(225)).build());
        assertThat(reading.input().link()).isEqualTo(VideoLink.HDMI);
        assertThat(reading.input().maxTmdsClock()).isEqualTo(Frequency.ofHz(225_000_000));
        assertThat(codes(reading)).containsExactly(DefectCode.LINK_CONTRADICTORY);
    }

    @Test
    void blocksThatAreNotReadAreNotMisread() {
        // Tags of CTA-861-I tables 62 and 64: audio 1, another vendor 3, speakers 4, VESA transfer 5, video format 6;
        // extended: colorimetry 5, HDR 6, native resolution 8, format preference 13.
        EdidReading reading = read(new CtaBuilder()
                .dataBlock(1, 16, 16, 16)
                .dataBlock(3, 0x11, 0x22, 0x33, 16)
                .dataBlock(4, 16, 0, 0)
                .dataBlock(5, 16)
                .dataBlock(6, 16)
                .dataBlock(7, 5, 16)
                .dataBlock(7, 6, 16)
                .dataBlock(7, 8, 16)
                .dataBlock(7, 13, 16)
                .video(4));
        assertThat(reading.timings().stream().map(AcceptedTiming::label)).containsExactly("vic:4");
        assertThat(codes(reading)).hasSize(4).containsOnly(DefectCode.DATA_BLOCK_NOT_READ);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 128, 255})
    void anOffsetThatPointsNowhereLeavesTheExtensionOut(int offset) {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .extension(new CtaBuilder().video(16))
                .patch(128 + 2, offset)
                .build());
        assertThat(reading.timings()).isEmpty();
        assertThat(codes(reading)).containsExactly(DefectCode.EXTENSION_LAYOUT_INVALID);
    }

    @Test
    void offset0MeansNeitherDataBlocksNorTimings() {
        // CTA-861-I table 60.
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .extension(new CtaBuilder().video(16).detailed(DetailedTimingTest.vic(4), 0, 0))
                .patch(128 + 2, 0)
                .build());
        assertThat(reading.timings()).isEmpty();
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void aDataBlockThatRunsIntoTheTimingsEndsTheCollection() {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .extension(new CtaBuilder().video(16, 4).video(31, 19).detailed(DetailedTimingTest.vic(2), 0, 0))
                .patch(128 + 7, 0x5F)
                .build());
        assertThat(reading.timings().stream().map(AcceptedTiming::label))
                .containsExactly("detailed:1", "vic:16", "vic:4");
        assertThat(codes(reading)).containsExactly(DefectCode.DATA_BLOCK_OVERRUN);
    }

    @Test
    void aZeroedSlotBetweenDetailedTimingsIsPassedOver() {
        // Repeaters blank out single entries (common practice); CTA-861-I §7.3 pads with zeros.
        byte[] edid = EdidBuilder.digital(3)
                .extension(new CtaBuilder()
                        .detailed(DetailedTimingTest.vic(4), 0, 0)
                        .detailed(DetailedTimingTest.vic(2), 0, 0))
                .patch(128 + 4, new int[18])
                .build();
        assertThat(EdidReader.read(edid).findTiming("detailed:1").orElseThrow().timing())
                .isEqualTo(Cta861.find(2).orElseThrow().timing());
    }

    @Test
    void severalExtensionsAreJoined() {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .extension(new CtaBuilder().video(16).hdmi(225))
                .extension(new CtaBuilder().video(4, 16).hdmiForum(600))
                .build());
        assertThat(reading.timings().stream().map(AcceptedTiming::label)).containsExactly("vic:16", "vic:4");
        assertThat(reading.input().maxTmdsClock()).isEqualTo(Frequency.ofHz(600_000_000));
        assertThat(reading.defects()).isEmpty();
    }

    private static EdidReading read(CtaBuilder cta) {
        return EdidReader.read(EdidBuilder.digital(3).extension(cta).build());
    }

    private static List<DefectCode> codes(EdidReading reading) {
        return reading.defects().stream().map(EdidDefect::code).toList();
    }
}
