package rasterfit.app.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.app.problem.ServedTest;
import rasterfit.edid.CtaBuilder;
import rasterfit.edid.EdidBuilder;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Decoding over HTTP, of EDIDs written from the tables of E-EDID A2 and CTA-861-I. */
class DecodeTest extends ServedTest {
    private static final String BINARY = "application/octet-stream";
    private static final String TEXT = "text/plain";

    /** CTA-861-I table 1, VIC 16. */
    private static final RasterTiming FULL_HD = new RasterTiming(
            Frequency.ofHz(148_500_000),
            1920,
            88,
            44,
            148,
            1080,
            4,
            5,
            36,
            1125,
            Scan.PROGRESSIVE,
            Polarity.POSITIVE,
            Polarity.POSITIVE);

    private static EdidBuilder television() {
        return EdidBuilder.digital(3)
                .product("RFT", 0x1234)
                .made(12, 2011)
                .name("Lowick 40")
                .sizeCm(89, 50)
                .standard(1280, 2, 60)
                .detailed(FULL_HD, 886, 498)
                .rangeLimits(49, 61, 15, 68, 150)
                .extension(new CtaBuilder().video(16, 4, 220).hdmiWithVics(225, 1));
    }

    @Test
    void productLimitsPanelAndLinkComeOutAsTheyWereWritten() throws Exception {
        JsonNode display = decoded(television().build());

        assertThat(display.at("/product/manufacturer").asString()).isEqualTo("RFT");
        assertThat(display.at("/product/productCode").asInt()).isEqualTo(0x1234);
        assertThat(display.at("/product/edidVersion").asString()).isEqualTo("1.3");
        assertThat(display.at("/product/name").asString()).isEqualTo("Lowick 40");
        assertThat(display.at("/product/week").asInt()).isEqualTo(12);
        assertThat(display.at("/product/year").asInt()).isEqualTo(2011);
        assertThat(display.at("/rangeLimits/fieldRateHz/min").asInt()).isEqualTo(49);
        assertThat(display.at("/rangeLimits/fieldRateHz/max").asInt()).isEqualTo(61);
        assertThat(display.at("/rangeLimits/lineRateHz/min").asInt()).isEqualTo(15_000);
        assertThat(display.at("/rangeLimits/lineRateHz/max").asInt()).isEqualTo(68_000);
        assertThat(display.at("/rangeLimits/maxPixelClockHz").asString()).isEqualTo("150000000");
        assertThat(display.at("/continuousFrequency").asBoolean()).isFalse();
        assertThat(display.at("/maxTmdsClockHz").asString()).isEqualTo("225000000");
        assertThat(display.at("/panel/pixels/columns").asInt()).isEqualTo(1920);
        assertThat(display.at("/panel/pixels/rows").asInt()).isEqualTo(1080);
        assertThat(display.at("/panel/sizeMm/width").asInt()).isEqualTo(886);
        assertThat(display.at("/panel/sizeMm/height").asInt()).isEqualTo(498);
    }

    @Test
    void theDetailedTimingComesOutInFull() throws Exception {
        JsonNode detailed = timing(decoded(television().build()), "DETAILED", "", 0);

        assertThat(detailed.path("preferred").asBoolean()).isTrue();
        assertThat(detailed.path("chroma420Only").asBoolean()).isFalse();
        // 148.5 MHz / 2200 = 67.5 kHz, / 1125 = 60 Hz.
        assertThat(detailed.path("timing")).isEqualTo(JsonMapper.shared().readTree("""
                        {"pixelClockHz":"148500000","horizontalActive":1920,"horizontalFrontPorch":88,"horizontalSync":44,
                         "horizontalBackPorch":148,"horizontalTotal":2200,"verticalActive":1080,"verticalFrontPorch":4,
                         "verticalSync":5,"verticalBackPorch":36,"verticalTotal":1125,"scan":"PROGRESSIVE",
                         "horizontalPolarity":"POSITIVE","verticalPolarity":"POSITIVE","lineRateHz":"67500",
                         "fieldRateHz":"60"}"""));
    }

    @Test
    void aVicNamesItsTimingAndAnUnknownOneStaysWithoutOne() throws Exception {
        JsonNode display = decoded(television().build());

        JsonNode known = timing(display, "VIC", "vic", 4);
        // CTA-861-I table 1, VIC 4.
        assertThat(known.at("/timing/horizontalActive").asInt()).isEqualTo(1280);
        assertThat(known.at("/timing/pixelClockHz").asString()).isEqualTo("74250000");
        assertThat(known.at("/pictureAspect").asString()).isEqualTo("16/9");
        JsonNode unknown = timing(display, "VIC", "vic", 220);
        assertThat(unknown.has("timing")).isFalse();
        assertThat(rules(display)).contains("edid.vic-unknown");
    }

    @Test
    void anHdmiVicIsNoVic() throws Exception {
        JsonNode hdmi = timing(decoded(television().build()), "HDMI_VIC", "hdmiVic", 1);

        assertThat(hdmi.has("vic")).isFalse();
        // HDMI 1.4: HDMI VIC 1 is 3840 × 2160 at 30 Hz, 297 MHz.
        assertThat(hdmi.at("/timing/horizontalActive").asInt()).isEqualTo(3840);
        assertThat(hdmi.at("/timing/pixelClockHz").asString()).isEqualTo("297000000");
    }

    @Test
    void aStandardTimingIsASizeAndARateWithTheRasterBehindThem() throws Exception {
        JsonNode standard = timing(decoded(television().build()), "STANDARD", "", 0);

        // E-EDID table 3.19: 5:4 of 1280 columns is 1024 rows.
        assertThat(standard.at("/nominal/horizontalActive").asInt()).isEqualTo(1280);
        assertThat(standard.at("/nominal/verticalActive").asInt()).isEqualTo(1024);
        assertThat(standard.at("/nominal/fieldRateHz").asString()).isEqualTo("60");
        // VESA DMT 1.13, id 23h.
        assertThat(standard.path("label").asString()).isEqualTo("standard:1");
        assertThat(standard.path("basis").asString()).isEqualTo("DMT");
        assertThat(standard.at("/timing/pixelClockHz").asString()).isEqualTo("108000000");
    }

    @Test
    void timingsIn420AreMarked() throws Exception {
        // CTA-861-I §7.5.10, §7.5.11 and §7.5.6.
        JsonNode display = decoded(EdidBuilder.digital(3)
                .extension(new CtaBuilder()
                        .video(16, 96)
                        .dataBlock(7, 15, 0x02)
                        .dataBlock(7, 14, 97)
                        .dataBlock(7, 0, 0x4B))
                .build());

        assertThat(timing(display, "VIC", "vic", 16).path("chroma420").asBoolean())
                .isFalse();
        JsonNode also = timing(display, "VIC", "vic", 96);
        assertThat(also.path("chroma420").asBoolean()).isTrue();
        assertThat(also.path("chroma420Only").asBoolean()).isFalse();
        JsonNode only = timing(display, "VIC", "vic", 97);
        assertThat(only.path("chroma420").asBoolean()).isTrue();
        assertThat(only.path("chroma420Only").asBoolean()).isTrue();
        assertThat(display.at("/videoCapability/rgbRangeSelectable").asBoolean())
                .isTrue();
        assertThat(display.at("/videoCapability/videoFormatScan").asString()).isEqualTo("BOTH");
    }

    @Test
    void defaultGtfIsAFormulaOnlyWhereItIsGranted() throws Exception {
        // E-EDID table 3.26 byte 10 = 00h: default GTF, if bit 0 of byte 18h is set.
        EdidBuilder limits = EdidBuilder.digital(3).rangeLimits(50, 75, 30, 80, 140);
        assertThat(decoded(limits.build()).at("/rangeLimits/formula").asString())
                .isEqualTo("NONE");
        EdidBuilder granted = EdidBuilder.digital(3).continuousFrequency().rangeLimits(50, 75, 30, 80, 140);
        assertThat(decoded(granted.build()).at("/rangeLimits/formula").asString())
                .isEqualTo("DEFAULT_GTF");
    }

    @Test
    void rangeLimitsNameTheirFormulaWithItsNumbers() throws Exception {
        // E-EDID tables 3.27 and 3.28.
        JsonNode curve = decoded(EdidBuilder.digital(3)
                        .displayDescriptor(0xFD, 0, 50, 75, 30, 110, 17, 0x02, 0, 40, 81, 0x58, 0x02, 128, 41)
                        .build())
                .path("rangeLimits");
        assertThat(curve.path("formula").asString()).isEqualTo("SECONDARY_GTF");
        assertThat(curve.at("/secondaryGtf/startLineRateHz").asString()).isEqualTo("80000");
        assertThat(curve.at("/secondaryGtf/cPercent").asDouble()).isEqualTo(40.5);
        assertThat(curve.at("/secondaryGtf/mPercentPerKhz").asInt()).isEqualTo(600);
        JsonNode cvt = decoded(EdidBuilder.digital(4)
                        .displayDescriptor(0xFD, 0, 50, 75, 30, 80, 17, 0x04, 0x11, 0x1D, 0, 0xC8, 0x58, 0, 60)
                        .build())
                .path("rangeLimits");
        assertThat(cvt.at("/cvt/version").asString()).isEqualTo("1.1");
        assertThat(cvt.at("/cvt/maxActivePixels").asInt()).isEqualTo(2048);
        assertThat(cvt.at("/cvt/aspects/2").asString()).isEqualTo("5/3");
        assertThat(cvt.at("/cvt/preferredAspect").asString()).isEqualTo("8/5");
    }

    @Test
    void anAnalogInputHasNoTmdsClock() throws Exception {
        JsonNode display = decoded(EdidBuilder.analog(3)
                .rangeLimits(50, 90, 30, 70, 110)
                .established(0x20, 0, 0)
                .build());

        assertThat(display.path("link").asString()).isEqualTo("ANALOG");
        assertThat(display.has("maxTmdsClockHz")).isFalse();
        // E-EDID table 3.18: bit 5 of the first byte is 640 × 480 at 60 Hz.
        assertThat(timing(display, "ESTABLISHED", "", 0)
                        .at("/nominal/verticalActive")
                        .asInt())
                .isEqualTo(480);
    }

    @Test
    void hexadecimalTextIsTheSameEdid() throws Exception {
        byte[] edid = television().build();
        String hex = HexFormat.ofDelimiter(" ").withUpperCase().formatHex(edid).replaceAll("(.{47}) ", "$1\r\n");

        HttpResponse<String> answer = post(hex.getBytes(StandardCharsets.US_ASCII), TEXT);

        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.body()).isEqualTo(post(edid, BINARY).body());
    }

    @Test
    void defectsAreFindingsAndNoErrors() throws Exception {
        byte[] edid = television().build();
        edid[127]++;

        JsonNode display = decoded(edid);

        assertThat(rules(display)).contains("edid.checksum-wrong");
        JsonNode finding = display.at("/findings/0");
        assertThat(finding.path("severity").asString()).isEqualTo("WARNING");
        assertThat(finding.path("block").asInt()).isZero();
        assertThat(finding.path("byteOffset").asInt()).isEqualTo(127);
        assertThat(timing(display, "VIC", "vic", 16).has("timing")).isTrue();
    }

    @Test
    void bytesWithoutAHeaderAreAnsweredWithThatFindingAlone() throws Exception {
        JsonNode display = decoded(new byte[256]);

        assertThat(rules(display)).contains("edid.header-missing");
        assertThat(display.has("product")).isFalse();
        assertThat(display.path("timings").size()).isZero();
    }

    @Test
    void theLongestEdidIsAnsweredAndALongerOneIsNot() throws Exception {
        assertThat(post(new byte[32_768], BINARY).statusCode()).isEqualTo(200);
        problem(post(new byte[32_768 + 128], BINARY), 422, "invalid-value");
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 127, 129, 200, 32_767})
    void partsOfBlocksAreRefusedWithTheLimit(int length) throws Exception {
        JsonNode problem = problem(post(new byte[length], BINARY), 422, "invalid-value");
        assertThat(pointer(problem)).isEmpty();
        assertThat(problem.at("/errors/0/limit").asString()).isEqualTo("128..32768");
    }

    @ParameterizedTest
    @ValueSource(strings = {"00 FG", "0", "00 F", "0x00", "00,FF", "{}"})
    void textOtherThanPairsOfHexadecimalDigitsIsRefused(String text) throws Exception {
        problem(post(text.getBytes(StandardCharsets.UTF_8), TEXT), 400, "wrong-type");
    }

    @Test
    void noTextIsNoEdid() throws Exception {
        problem(post(new byte[0], TEXT), 422, "invalid-value");
    }

    @Test
    void anotherMediaTypeIsRefused() throws Exception {
        problem(post(television().build(), "application/json"), 415, "unsupported-media-type");
    }

    private JsonNode decoded(byte[] edid) throws Exception {
        HttpResponse<String> answer = post(edid, BINARY);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.body()).doesNotContain(":null");
        return JsonMapper.shared().readTree(answer.body());
    }

    private HttpResponse<String> post(byte[] body, String type) throws Exception {
        return send(request("/v1/displays/decode").header("Content-Type", type).POST(BodyPublishers.ofByteArray(body)));
    }

    private static JsonNode timing(JsonNode display, String origin, String numberName, int number) {
        for (JsonNode timing : display.path("timings")) {
            boolean isNumber = numberName.isEmpty() || timing.path(numberName).asInt() == number;
            if (timing.path("origin").asString().equals(origin) && isNumber) {
                return timing;
            }
        }
        throw new AssertionError("no " + origin + " " + number + " in " + display);
    }

    private static String rules(JsonNode display) {
        StringBuilder rules = new StringBuilder();
        display.path("findings")
                .forEach(
                        finding -> rules.append(finding.path("rule").asString()).append(' '));
        return rules.toString();
    }
}
