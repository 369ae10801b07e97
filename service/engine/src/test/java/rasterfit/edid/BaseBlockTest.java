package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** The fixed fields of the base block, each against its table in VESA E-EDID release A2. */
class BaseBlockTest {
    @Test
    void theManufacturerIsThreeLettersOfFiveBits() {
        // E-EDID table 3.4: 'A' = 00001; 00010 00011 00100 spells BCD = 0864h.
        byte[] edid = EdidBuilder.digital(3).patch(0x08, 0x08, 0x64).build();
        assertThat(product(edid).manufacturer()).isEqualTo("BCD");
        assertThat(product(EdidBuilder.digital(3).product("ZAY", 0xBEEF).build()))
                .satisfies(product -> {
                    assertThat(product.manufacturer()).isEqualTo("ZAY");
                    assertThat(product.productCode()).isEqualTo(0xBEEF);
                });
    }

    @Test
    void aManufacturerCodeThatIsNoLetterIsADefect() {
        EdidReading reading =
                EdidReader.read(EdidBuilder.digital(3).patch(0x08, 0x00, 0x64).build());
        assertThat(reading.product().manufacturer()).isEqualTo("?CD");
        assertThat(codes(reading)).containsExactly(DefectCode.MANUFACTURER_ID_INVALID);
    }

    @ParameterizedTest
    @CsvSource({"0, 1.0", "1, 1.1", "2, 1.2", "3, 1.3", "4, 1.4"})
    void everyVersionFrom10To14IsReadWithoutComplaint(int revision, String version) {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(revision).build());
        assertThat(reading.product().version()).hasToString(version);
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void anUnknownVersionIsADefectAndReadLikeTheNearest() {
        EdidReading later =
                EdidReader.read(EdidBuilder.digital(5).continuousFrequency().build());
        assertThat(codes(later)).containsExactly(DefectCode.VERSION_UNKNOWN);
        assertThat(later.continuousFrequency()).isTrue();
        EdidReading other =
                EdidReader.read(EdidBuilder.digital(3).patch(0x12, 2).build());
        assertThat(codes(other)).containsExactly(DefectCode.VERSION_UNKNOWN);
    }

    @Test
    void theYearCountsFrom1990AndMayBeAModelYear() {
        // E-EDID table 3.7: week 1 to 54 or 00h unspecified; FFh makes it a model year from EDID 1.4 on.
        ProductIdentity made = product(EdidBuilder.digital(4).made(17, 2011).build());
        assertThat(made.week()).isEqualTo(17);
        assertThat(made.year()).isEqualTo(2011);
        assertThat(made.isModelYear()).isFalse();
        ProductIdentity model = product(EdidBuilder.digital(4).made(0xFF, 2024).build());
        assertThat(model.week()).isNull();
        assertThat(model.year()).isEqualTo(2024);
        assertThat(model.isModelYear()).isTrue();
        assertThat(product(EdidBuilder.digital(3).made(0xFF, 2004).build()).isModelYear())
                .isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        // E-EDID table 3.11, byte 14h, analog: bits 6–5 level, 4 setup, 3 separate, 2 composite, 1 on green, 0
        // serration.
        "0x08, 700, 300, false, SEPARATE_SYNC, false",
        "0x2C, 714, 286, false, SEPARATE_SYNC+COMPOSITE_SYNC, false",
        "0x52, 1000, 400, true, SYNC_ON_GREEN, false",
        "0x6F, 700, 0, false, SEPARATE_SYNC+COMPOSITE_SYNC+SYNC_ON_GREEN, true",
        "0x00, 700, 300, false, '', false"
    })
    void anAnalogInputStatesItsLevelsAndSyncs(
            String value, int videoMv, int syncMv, boolean setup, String syncs, boolean serration) {
        EdidReading reading = EdidReader.read(
                EdidBuilder.analog(3).videoInput(Integer.decode(value)).build());
        AnalogInput analog = reading.input().analog();
        assertThat(reading.input().link()).isEqualTo(VideoLink.ANALOG);
        assertThat(reading.input().digital()).isNull();
        assertThat(reading.input().maxTmdsClock()).isNull();
        assertThat(analog.level().videoMillivolts()).isEqualTo(videoMv);
        assertThat(analog.level().syncMillivolts()).isEqualTo(syncMv);
        assertThat(analog.expectsSetup()).isEqualTo(setup);
        assertThat(String.join("+", analog.syncs().stream().map(Enum::name).toList()))
                .isEqualTo(syncs);
        assertThat(analog.needsSerration()).isEqualTo(serration);
    }

    @ParameterizedTest
    @CsvSource({
        // E-EDID table 3.11, byte 14h, digital, EDID 1.4: bits 6–4 depth, bits 3–0 interface.
        "0x80, , ",
        "0x91, 6, DVI",
        "0xA2, 8, HDMI_A",
        "0xB3, 10, HDMI_B",
        "0xC4, 12, MDDI",
        "0xD5, 14, DISPLAY_PORT",
        "0xE6, 16, ",
        "0xF0, , "
    })
    void aDigitalInputOfEdid14StatesDepthAndInterface(String value, Integer bits, DigitalInput.Standard standard) {
        EdidBuilder builder = EdidBuilder.digital(4).videoInput(Integer.decode(value));
        DigitalInput digital = EdidReader.read(builder.build()).input().digital();
        assertThat(digital).isEqualTo(new DigitalInput(bits, standard));
        byte[] earlier =
                EdidBuilder.digital(3).videoInput(Integer.decode(value)).build();
        assertThat(EdidReader.read(earlier).input().digital()).isEqualTo(new DigitalInput(null, null));
    }

    @Test
    void bit0OfTheFeaturesIsContinuousFrequencyIn14AndDefaultGtfBefore() {
        // E-EDID table 3.14 and §3.6.4.
        EdidReading in14 = EdidReader.read(EdidBuilder.digital(4).features(0x01).build());
        assertThat(in14.continuousFrequency()).isTrue();
        assertThat(in14.defaultGtf()).isFalse();
        EdidReading in13 = EdidReader.read(EdidBuilder.digital(3).features(0x01).build());
        assertThat(in13.continuousFrequency()).isFalse();
        assertThat(in13.defaultGtf()).isTrue();
        EdidReading clear =
                EdidReader.read(EdidBuilder.digital(4).features(0xFE).build());
        assertThat(clear.continuousFrequency()).isFalse();
        assertThat(clear.defaultGtf()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        // E-EDID table 3.12: one byte 00h makes the other an aspect: (v + 99)/100 landscape, 100/(v + 99) portrait. The
        // table's examples: 4Fh is 16:9 = 1.78, 3Dh is 16:10 = 1.60, 22h is 4:3 = 1.33.
        "79, 0, 178/100",
        "61, 0, 160/100",
        "34, 0, 133/100",
        "0, 79, 100/178"
    })
    void aSizeByteAloneIsAnAspect(int width, int height, String aspect) {
        ScreenSize screen = EdidReader.read(
                        EdidBuilder.digital(4).sizeCm(width, height).build())
                .screen();
        assertThat(screen).isEqualTo(new ScreenSize(null, Rational.parse(aspect)));
        ScreenSize before14 = EdidReader.read(
                        EdidBuilder.digital(3).sizeCm(width, height).build())
                .screen();
        assertThat(before14).isEqualTo(new ScreenSize(null, null));
    }

    @Test
    void millimetresOfTheFirstDetailedTimingRefineTheCentimetres() {
        byte[] fine = EdidBuilder.digital(4)
                .sizeCm(89, 50)
                .detailed(DetailedTimingTest.vic(16), 885, 498)
                .build();
        assertThat(EdidReader.read(fine).screen().sizeMm()).isEqualTo(new ScreenSize.SizeMm(885, 498));
        assertThat(EdidReader.read(EdidBuilder.digital(4).sizeCm(89, 50).build())
                        .screen()
                        .sizeMm())
                .isEqualTo(new ScreenSize.SizeMm(890, 500));
    }

    @Test
    void millimetresThatAreAShapeGiveWayToTheCentimetres() {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(4)
                .sizeCm(89, 50)
                .detailed(DetailedTimingTest.vic(16), 16, 9)
                .build());
        assertThat(reading.screen().sizeMm()).isEqualTo(new ScreenSize.SizeMm(890, 500));
        assertThat(codes(reading)).containsExactly(DefectCode.IMAGE_SIZE_CONTRADICTORY);
    }

    @Test
    void aProjectorHasNoSize() {
        assertThat(EdidReader.read(EdidBuilder.digital(3).build()).screen()).isEqualTo(new ScreenSize(null, null));
    }

    @Test
    void everyEstablishedTimingHasItsBit() {
        // E-EDID table 3.18, byte 23h from bit 7 on, then 24h, then bit 7 of 25h.
        List<String> expected = List.of(
                "720x400@70",
                "720x400@88",
                "640x480@60",
                "640x480@67",
                "640x480@72",
                "640x480@75",
                "800x600@56",
                "800x600@60",
                "800x600@72",
                "800x600@75",
                "832x624@75",
                "1024x768i@87",
                "1024x768@60",
                "1024x768@70",
                "1024x768@75",
                "1280x1024@75",
                "1152x870@75");
        for (int bit = 0; bit < 24; bit++) {
            int mask = 0x800000 >> bit;
            EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                    .established(mask >> 16, mask >> 8, mask)
                    .build());
            if (bit < expected.size()) {
                assertThat(reading.timings()).hasSize(1);
                AcceptedTiming timing = reading.timings().get(0);
                assertThat(timing.label()).isEqualTo("established:" + (bit + 1));
                assertThat(written(timing.nominal())).isEqualTo(expected.get(bit));
                assertThat(written(sizeAndRate(timing.timing()))).isEqualTo(expected.get(bit));
            } else {
                assertThat(reading.timings()).isEmpty(); // manufacturers' own bits
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        // E-EDID table 3.19: (byte + 31) · 8 wide; bits 7–6: 00 16:10, 01 4:3, 10 5:4, 11 16:9; bits 5–0 + 60 Hz.
        "0x81, 0xC0, 1280x720@60",
        "0xD1, 0xC0, 1920x1080@60",
        "0xA9, 0x40, 1600x1200@60",
        "0x81, 0x80, 1280x1024@60",
        "0xB3, 0x00, 1680x1050@60",
        "0x31, 0x59, 640x480@85",
        "0xFF, 0x7F, 2288x1716@123"
    })
    void aStandardTimingIsAWidthAnAspectAndARate(String first, String second, String expected) {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .patch(0x28, Integer.decode(first), Integer.decode(second))
                .build());
        assertThat(reading.timings()).hasSize(1);
        assertThat(reading.timings().get(0).label()).isEqualTo("standard:2");
        assertThat(written(reading.timings().get(0).nominal())).isEqualTo(expected);
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void aspectCode0WasSquareBeforeEdid13() {
        // E-EDID table 3.19 note 4.
        byte[] edid = EdidBuilder.digital(2).standard(1024, 0, 60).build();
        assertThat(written(EdidReader.read(edid).timings().get(0).nominal())).isEqualTo("1024x1024@60");
    }

    @ParameterizedTest
    @CsvSource({"0x00, 0x00", "0x00, 0x40", "0x20, 0x20"})
    void paddingIsNoStandardTiming(String first, String second) {
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .patch(0x26, Integer.decode(first), Integer.decode(second))
                .build());
        assertThat(reading.timings()).isEmpty();
        assertThat(codes(reading)).containsExactly(DefectCode.STANDARD_TIMING_RESERVED);
    }

    @Test
    void aDescriptorAddsSixStandardTimings() {
        // E-EDID §3.10.3.6: tag FAh, byte 4 zero, six pairs, 0Ah.
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .displayDescriptor(
                        0xFA, 0, 0x81, 0xC0, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x31, 0x59, 0x0A)
                .build());
        assertThat(reading.timings().stream().map(AcceptedTiming::label)).containsExactly("standard:9", "standard:14");
    }

    @Test
    void theNameEndsAtTheLineFeed() {
        assertThat(product(EdidBuilder.digital(3).name("Lowick 40").build()).displayName())
                .isEqualTo("Lowick 40");
        assertThat(product(EdidBuilder.digital(3).name("Thirteen char").build()).displayName())
                .isEqualTo("Thirteen char");
        assertThat(product(EdidBuilder.digital(3).build()).displayName()).isNull();
    }

    private static ProductIdentity product(byte[] edid) {
        return EdidReader.read(edid).product();
    }

    private static List<DefectCode> codes(EdidReading reading) {
        return reading.defects().stream().map(EdidDefect::code).toList();
    }

    /** As the standard's table prints it: 56.25 Hz is 56 Hz; one name is not rounded but cut off, 72.8 Hz. */
    private static NominalFormat sizeAndRate(RasterTiming timing) {
        Rational rate = timing.fieldRate().hz();
        boolean isCutOff = rate.floor() == 72;
        return new NominalFormat(timing.horizontalActive(), timing.verticalActive(), timing.scan(), (int)
                (isCutOff ? rate.floor() : rate.round()));
    }

    private static String written(NominalFormat format) {
        return format.horizontalActive() + "x" + format.verticalActive() + (format.scan() == Scan.INTERLACED ? "i" : "")
                + "@" + format.fieldRateHz();
    }

    @Test
    void weeksCountFrom1To54() {
        // E-EDID A2 table 3.4: 0 is no week, 55 and more are reserved, 255 means a model year.
        assertThat(product(EdidBuilder.digital(4).made(0, 2011).build()).week()).isNull();
        assertThat(product(EdidBuilder.digital(4).made(1, 2011).build()).week()).isEqualTo(1);
        assertThat(product(EdidBuilder.digital(4).made(54, 2011).build()).week())
                .isEqualTo(54);
        assertThat(product(EdidBuilder.digital(4).made(55, 2011).build()).week())
                .isNull();
    }

    @Test
    void millimetresMayDifferByTheCentimetreThatRoundingHides() {
        byte[] edid = EdidBuilder.digital(4)
                .sizeCm(89, 50)
                .detailed(DetailedTimingTest.vic(16), 880, 490)
                .build();
        assertThat(EdidReader.read(edid).screen().sizeMm()).isEqualTo(new ScreenSize.SizeMm(880, 490));
        assertThat(codes(EdidReader.read(edid))).isEmpty();
    }
}
