package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.Tables;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * EDIDs of real displays against a manifest made by another decoder. They lie beside the repository and are not part of it;
 * where they are absent the tests are skipped and say so.
 */
class SuppliedEdidsTest {
    /** Short video descriptors that stand for no timing (CTA-861-I §7.5.1); the manifest lists them as they are. */
    private static final Set<Integer> RESERVED = Set.of(0, 128, 254, 255);

    @Test
    void versionInputAndLengthAreThoseOfTheManifest() {
        forEach((row, reading) -> {
            assertThat(product(reading).version()).hasToString(row.get("ver"));
            assertThat(product(reading).year()).isEqualTo(Integer.valueOf(row.get("year")));
            assertThat(input(reading).analog() != null)
                    .isEqualTo(row.get("analog").equals("1"));
            assertThat(input(reading).digital() == null)
                    .isEqualTo(row.get("analog").equals("1"));
            assertThat(row.get("id")).startsWith(product(reading).manufacturer());
        });
    }

    @Test
    void rangeLimitsAreThoseOfTheManifest() {
        forEach((row, reading) -> {
            RangeLimits limits = reading.rangeLimits();
            if (row.get("range_v").equals("-")) {
                assertThat(limits).isNull();
                return;
            }
            assertThat(limits).isNotNull();
            String[] field = row.get("range_v").split("-", -1);
            String[] line = row.get("range_h_khz").split("-", -1);
            assertThat(limits.minFieldRate()).isEqualTo(Frequency.parseHz(field[0]));
            assertThat(limits.maxFieldRate()).isEqualTo(Frequency.parseHz(field[1]));
            assertThat(limits.minLineRate())
                    .isEqualTo(Frequency.parseHz(line[0]).times(1000));
            assertThat(limits.maxLineRate())
                    .isEqualTo(Frequency.parseHz(line[1]).times(1000));
            assertThat(limits.maxPixelClock()).isEqualTo(megahertz(row.get("maxclk_mhz")));
        });
    }

    @Test
    void thePreferredTimingIsThatOfTheManifest() {
        forEach((row, reading) -> {
            // 1920x540i@50.044/74.25: lines per field, and the field rate without the half line of CTA-861-I §7.2.1.
            String[] parts = row.get("preferred").split("[x@/]", -1);
            boolean isInterlaced = parts[1].endsWith("i");
            AcceptedTiming first = reading.findTiming("detailed:1").orElseThrow();
            assertThat(reading.preferredTiming()).contains(first);
            RasterTiming timing = first.timing();
            assertThat(timing).isNotNull();
            int fields = timing.scan().fieldsPerFrame();
            assertThat(timing.scan()).isEqualTo(isInterlaced ? Scan.INTERLACED : Scan.PROGRESSIVE);
            assertThat(timing.horizontalActive()).isEqualTo(Integer.parseInt(parts[0]));
            assertThat(timing.verticalActive() / fields).isEqualTo(Integer.parseInt(parts[1].replace("i", "")));
            Frequency withoutHalfLine = timing.lineRate().dividedBy(Rational.of(timing.verticalTotal() / fields));
            assertPrinted(withoutHalfLine.hz(), parts[2]);
            assertPrinted(timing.pixelClock().hz().dividedBy(1_000_000), parts[3]);
        });
    }

    @Test
    void vicsAreThoseOfTheManifest() {
        forEach((row, reading) -> {
            List<Integer> listed = Arrays.stream(row.get("vics").split(",", -1))
                    .filter(vic -> !vic.isEmpty())
                    .map(Integer::valueOf)
                    .filter(vic -> !RESERVED.contains(vic))
                    .distinct()
                    .toList();
            assertThat(reading.timings().stream()
                            .filter(timing -> timing.origin() == TimingOrigin.VIC)
                            .filter(timing -> timing.chroma420() != Chroma420.ONLY)
                            .map(AcceptedTiming::vic))
                    .containsExactlyElementsOf(listed);
            // The column holds the 4:2:0 video data block, not the capability map.
            List<Integer> only420 = Arrays.stream(row.get("y420").split(",", -1))
                    .filter(vic -> !vic.isEmpty())
                    .map(Integer::valueOf)
                    .filter(vic -> !listed.contains(vic))
                    .toList();
            assertThat(reading.timings().stream()
                            .filter(timing -> timing.origin() == TimingOrigin.VIC)
                            .filter(timing -> timing.chroma420() == Chroma420.ONLY)
                            .map(AcceptedTiming::vic))
                    .containsExactlyElementsOf(only420);
        });
    }

    @Test
    void hdmiBlocksAreThoseOfTheManifest() {
        forEach((row, reading) -> {
            HdmiBlock hdmi = input(reading).hdmi();
            HdmiForumBlock forum = input(reading).hdmiForum();
            assertThat(hdmi != null).isEqualTo(!row.get("hdmi_vsdb_max_tmds").isEmpty());
            assertThat(forum != null).isEqualTo(!row.get("hf_vsdb_max_tmds").isEmpty());
            if (hdmi != null) {
                assertThat(hdmi.declaredMaxTmdsClock()).isEqualTo(megahertz(row.get("hdmi_vsdb_max_tmds")));
            }
            if (forum != null) {
                assertThat(forum.declaredMaxTmdsCharacterRate()).isEqualTo(megahertz(row.get("hf_vsdb_max_tmds")));
            }
        });
    }

    @Test
    void checksumsAndDisplayIdAreThoseOfTheManifest() {
        forEach((row, reading) -> {
            boolean hasWrongSum =
                    reading.defects().stream().anyMatch(defect -> defect.code() == DefectCode.CHECKSUM_WRONG);
            assertThat(hasWrongSum).isEqualTo(row.get("csum_ok").equals("0"));
            boolean hasDisplayId =
                    reading.timings().stream().anyMatch(timing -> timing.origin() == TimingOrigin.DISPLAYID);
            // One of them has a section without timings.
            boolean mayLackTimings = row.get("id").startsWith("APPAE3A");
            assertThat(hasDisplayId).isEqualTo(row.get("displayid").equals("1") && !mayLackTimings);
            assertThat(reading.defects())
                    .noneMatch(defect -> defect.code() == DefectCode.EXTENSION_NOT_READ
                            && defect.message().contains("70h"));
        });
    }

    private static void forEach(BiConsumer<Map<String, String>, EdidReading> check) {
        Path folder = Tables.sharedFile("edid");
        List<Map<String, String>> manifest = Tables.shared("edid/manifest.tsv");
        assertThat(manifest).hasSize(65);
        for (Map<String, String> row : manifest) {
            try {
                byte[] edid = Files.readAllBytes(folder.resolve(row.get("id") + ".edid"));
                assertThat(edid).hasSize(128 * Integer.parseInt(row.get("blocks")));
                check.accept(row, EdidReader.read(edid));
            } catch (IOException e) {
                throw new AssertionError("cannot read the EDID " + row.get("id"), e);
            } catch (AssertionError | RuntimeException e) {
                throw new AssertionError("EDID " + row.get("id"), e);
            }
        }
    }

    private static ProductIdentity product(EdidReading reading) {
        assertThat(reading.product()).isNotNull();
        return reading.product();
    }

    private static VideoInput input(EdidReading reading) {
        assertThat(reading.input()).isNotNull();
        return reading.input();
    }

    private static @Nullable Frequency megahertz(String printed) {
        return printed.isEmpty() || printed.equals("0")
                ? null
                : Frequency.parseHz(printed).times(1_000_000);
    }

    /** Equal to one unit of the last printed digit. */
    private static void assertPrinted(Rational actual, String printed) {
        int decimals = printed.length() - printed.indexOf('.') - 1;
        Rational unit = Rational.ONE.dividedBy((long) Math.pow(10, decimals));
        assertThat(actual.minus(Rational.parse(printed)).abs()).isLessThanOrEqualTo(unit);
    }
}
