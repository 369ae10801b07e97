package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * The EDIDs of the demo displays, described in words that can be read and written by {@link EdidBuilder} from the tables
 * of the standards. The bytes in the demo catalogue are these and no others, so that they can be made again. The maker
 * is invented; OSY is in no list of assigned codes known to us. There are no serial numbers.
 */
class DemoEdidsTest {
    private static final Path CATALOGUE = Path.of("../../db/demo/catalogue.json");
    private static final Path README_REQUEST = Path.of("../../openapi/examples/readme-request.json");
    private static final Pattern EDID = Pattern.compile("\"edidBase64\": \"([^\"]*)\"");

    /** CTA-861-I table 60, byte 3: IT formats are not overscanned. */
    private static final int UNDERSCAN = 0x80;

    /** CTA-861-I table 60, byte 3: basic audio, YCbCr 4:4:4 and 4:2:2. */
    private static final int SOUND_AND_COLOUR = 0x70;

    /** CTA-861-I table 60, byte 3, low bits: the first detailed timing is native. */
    private static final int FIRST_DETAILED_IS_NATIVE = 1;

    /** CTA-861-I table 64, extended tag 0, the video capability block: ranges selectable, over- and underscan settable. */
    private static final int[] VIDEO_CAPABILITY = {0x00, 0xCF};

    /** VESA CVT 1.2, reduced blanking 1: 241.5 MHz, 88.787 kHz, 59.951 Hz. */
    private static final RasterTiming REDUCED_BLANKING_1440 = new RasterTiming(
            Frequency.ofHz(241_500_000),
            2560,
            48,
            32,
            80,
            1440,
            3,
            5,
            33,
            1481,
            Scan.PROGRESSIVE,
            Polarity.POSITIVE,
            Polarity.NEGATIVE);

    /** A television of the HDMI 1.3 days: 50 and 60 Hz, 225 MHz, no promise beyond its list. */
    private static byte[] lowick40() {
        EdidBuilder edid = EdidBuilder.digital(3)
                .product("OSY", 0x4001)
                .features(0x0E) // RGB colour, sRGB primaries, first detailed timing preferred
                .made(0, 2012)
                .sizeCm(89, 50)
                .established(0x21, 0x08, 0x00) // 640x480, 800x600, 1024x768, all at 60 Hz
                .detailed(vic(16), 885, 498)
                .detailed(vic(4), 885, 498)
                .rangeLimits(48, 62, 15, 68, 150)
                .name("Lowick 40")
                .extension(new CtaBuilder()
                        .flags(UNDERSCAN | SOUND_AND_COLOUR | FIRST_DETAILED_IS_NATIVE)
                        .video(16, 31, 4, 19, 5, 20, 3, 2, 18, 17, 7, 6, 22, 21, 1)
                        .dataBlock(1, 0x09, 0x07, 0x07) // two channels of PCM
                        .dataBlock(4, 0x01, 0x00, 0x00) // front left and right
                        .dataBlock(7, VIDEO_CAPABILITY)
                        .hdmi(225));
        return withBroadcastPrimaries(edid);
    }

    /** A television of the HDMI 2.0 days: 2160 lines at 50 and 60 Hz, 600 MHz, range of RGB selectable. */
    private static byte[] kyloe55() {
        EdidBuilder edid = EdidBuilder.digital(3)
                .product("OSY", 0x5501)
                .features(0x0E)
                .made(0, 2019)
                .sizeCm(121, 68)
                .established(0x21, 0x08, 0x00)
                .detailed(vic(97), 1210, 680)
                .detailed(vic(16), 1210, 680)
                .rangeLimits(23, 76, 15, 136, 600)
                .name("Kyloe 55")
                .extension(new CtaBuilder()
                        .flags(UNDERSCAN | SOUND_AND_COLOUR | FIRST_DETAILED_IS_NATIVE)
                        .video(97, 96, 95, 94, 93, 16, 31, 4, 19, 32, 5, 20, 3, 2, 18, 17, 7, 6, 22, 21, 1)
                        .dataBlock(1, 0x09, 0x07, 0x07)
                        .dataBlock(4, 0x01, 0x00, 0x00)
                        .dataBlock(7, VIDEO_CAPABILITY)
                        .hdmiWithVics(300, 1, 2, 3)
                        .hdmiForum(600));
        return withBroadcastPrimaries(edid);
    }

    /**
     * A monitor that promises every timing within 56–76 Hz and 30–115 kHz, and takes nothing at 50 Hz. HDMI 1.3a asks for
     * EDID 1.3; only 1.4 can make that promise, and monitors with 1.4 on HDMI are common practice.
     */
    private static byte[] fenham27() {
        EdidBuilder edid = EdidBuilder.digital(4)
                .product("OSY", 0x2701)
                .videoInput(0xA2) // digital, 8 bits per colour, HDMI-a
                .features(0x06) // RGB 4:4:4, sRGB primaries, first detailed timing preferred and native
                .continuousFrequency()
                .made(0, 2016)
                .sizeCm(60, 34)
                .established(0x21, 0x08, 0x00)
                .standard(1280, 2, 60)
                .standard(1600, 3, 60)
                .standard(1680, 0, 60)
                .detailed(REDUCED_BLANKING_1440, 597, 336)
                .detailed(vic(16), 597, 336)
                .rangeLimits(56, 76, 30, 115, 300)
                .name("Fenham 27")
                .extension(new CtaBuilder()
                        .flags(UNDERSCAN | FIRST_DETAILED_IS_NATIVE)
                        .video(16, 4, 3, 2, 1)
                        .dataBlock(7, VIDEO_CAPABILITY)
                        .hdmi(300));
        return withBroadcastPrimaries(edid);
    }

    private static Map<String, byte[]> all() {
        Map<String, byte[]> edids = new LinkedHashMap<>();
        edids.put("lowick-40", lowick40());
        edids.put("kyloe-55", kyloe55());
        edids.put("fenham-27", fenham27());
        return edids;
    }

    @Test
    void theDemoCatalogueHoldsExactlyTheBytesThatAreDescribedHere() throws IOException {
        String catalogue = Files.readString(CATALOGUE);
        Map<String, String> described = new LinkedHashMap<>();
        Map<String, String> written = new LinkedHashMap<>();
        all().forEach((id, edid) -> {
            described.put(id, Base64.getEncoder().encodeToString(edid));
            written.put(id, firstEdid(catalogue.substring(catalogue.indexOf("\"id\": \"" + id + "\""))));
        });
        assertThat(written).isEqualTo(described);
        assertThat(EDID.matcher(catalogue).results()).hasSize(described.size());
    }

    @Test
    void theRequestOfTheReadmeHoldsTheTelevisionDescribedHere() throws IOException {
        assertThat(firstEdid(Files.readString(README_REQUEST)))
                .isEqualTo(Base64.getEncoder().encodeToString(lowick40()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"lowick-40", "kyloe-55", "fenham-27"})
    void theDemoEdidsHaveNoDefects(String id) {
        EdidReading reading = EdidReader.read(edid(id));
        assertThat(reading.hasHeader()).isTrue();
        assertThat(reading.defects()).isEmpty();
    }

    @Test
    void theTelevisionsListBothFieldRatesAndTheMonitorOnlySixtyHertz() {
        assertThat(vics("lowick-40")).contains(4, 16, 19, 31, 3, 2, 18, 17, 5, 20);
        assertThat(vics("kyloe-55")).contains(97, 96, 16, 31, 4, 19);
        assertThat(vics("fenham-27")).containsExactlyInAnyOrder(1, 2, 3, 4, 16);
    }

    /** White point and primaries of ITU-R BT.709, coded as in E-EDID table 3.17: ten bits each, low bits first. */
    private static byte[] withBroadcastPrimaries(EdidBuilder edid) {
        double[] xy = {0.640, 0.330, 0.300, 0.600, 0.150, 0.060, 0.3127, 0.3290};
        int[] bytes = new int[10];
        for (int i = 0; i < xy.length; i++) {
            int code = (int) Math.round(xy[i] * 1024);
            bytes[i / 4] |= (code & 3) << (6 - 2 * (i % 4));
            bytes[2 + i] = code >> 2;
        }
        return edid.patch(0x19, bytes).build();
    }

    private static RasterTiming vic(int vic) {
        return Cta861.find(vic).orElseThrow().timing();
    }

    private static byte[] edid(String id) {
        byte[] edid = all().get(id);
        assertThat(edid).as(id).isNotNull();
        return edid;
    }

    private static Set<Integer> vics(String id) {
        TreeSet<Integer> vics = new TreeSet<>();
        List<AcceptedTiming> timings = EdidReader.read(edid(id)).timings();
        timings.stream().map(AcceptedTiming::vic).filter(vic -> vic != null).forEach(vics::add);
        return vics;
    }

    private static String firstEdid(String json) {
        MatchResult match = EDID.matcher(json).results().findFirst().orElseThrow();
        return match.group(1);
    }
}
