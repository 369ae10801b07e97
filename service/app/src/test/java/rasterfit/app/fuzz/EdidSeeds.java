package rasterfit.app.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rasterfit.edid.CtaBuilder;
import rasterfit.edid.DisplayIdBuilder;
import rasterfit.edid.DisplayIdDescriptors;
import rasterfit.edid.EdidBuilder;
import rasterfit.edid.EdidReader;
import rasterfit.timing.Cta861;
import rasterfit.timing.RasterTiming;

/** EDIDs to begin with, by name: built from the standards, those of the demo gear, and those supplied for tests. */
public final class EdidSeeds {
    /** Files that stand beside the repository, read where they are; without them there are fewer seeds. */
    private static final Path SUPPLIED = Repository.ROOT.resolve("../shared/edid");

    private EdidSeeds() {}

    /** Every seed, in a fixed order. */
    public static Map<String, byte[]> all() {
        Map<String, byte[]> seeds = new LinkedHashMap<>(built());
        int number = 1;
        for (byte[] edid : RequestSeeds.demoEdids()) {
            seeds.put("demo-" + number++, edid);
        }
        seeds.putAll(supplied());
        return seeds;
    }

    /** One of each kind of descriptor, data block and input that the builders know, and the greatest length. */
    static Map<String, byte[]> built() {
        Map<String, byte[]> seeds = new LinkedHashMap<>();
        seeds.put("television", television().build());
        seeds.put("monitor", monitor().build());
        seeds.put("displayid-1", displayId1().build());
        seeds.put("displayid-2", displayId2().build());
        seeds.put("analog-1.2", analog(2).build());
        seeds.put("analog-1.4", analog(4).build());
        seeds.put("every-vic", everyVic().build());
        seeds.put("further-timings", furtherTimings().build());
        seeds.put("256-blocks", longest());
        seeds.put("cut-short", Arrays.copyOf(television().build(), 200));
        return seeds;
    }

    private static EdidBuilder television() {
        return EdidBuilder.digital(3)
                .product("RFT", 40)
                .sizeCm(89, 50)
                .established(0x21, 0x08, 0x00)
                .standard(1280, 3, 60)
                .detailed(timing(16), 885, 498)
                .detailed(timing(5), 885, 498)
                .rangeLimits(48, 62, 15, 70, 150)
                .name("Lowick 40")
                .extension(new CtaBuilder()
                        .flags(0xF1)
                        .videoBytes(0x90, 4, 31, 19, 3, 18, 8, 23)
                        .dataBlock(1, 0x09, 0x07, 0x07)
                        .hdmiWithVics(225, 1, 2)
                        .hdmiForum(600)
                        // CTA-861-I table 64: 5 colorimetry, 0 video capability, 14 and 15 YCbCr 4:2:0.
                        .dataBlock(7, 5, 0x80, 0x00)
                        .dataBlock(7, 0, 0x2A)
                        .dataBlock(7, 14, 97, 96)
                        .dataBlock(7, 15, 0x03)
                        .detailed(timing(4), 885, 498));
    }

    private static EdidBuilder monitor() {
        return EdidBuilder.digital(4)
                .digitalInterface(5)
                .continuousFrequency()
                .established(0xFF, 0xFF, 0x80)
                .standard(1920, 0, 75)
                .standard(1280, 2, 85)
                .detailed(timing(16), 530, 298)
                // E-EDID tables 3.26 to 3.28: rate offsets, then a CVT and its version, sizes, aspects and blankings.
                .displayDescriptor(0xFD, 0x0A, 48, 180, 30, 200, 60, 0x04, 0x11, 0, 0xF0, 0xF8, 0x18, 0x80, 60)
                // E-EDID table 3.33: version, then six bytes of established timings III.
                .displayDescriptor(0xF7, 0, 0x0A, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xF0)
                // E-EDID table 3.32: version, then four CVT codes of three bytes.
                .displayDescriptor(0xF8, 0, 1, 0x2A, 0x24, 0x7F, 0x57, 0x18, 0x1F, 0, 0, 0, 0, 0, 0);
    }

    private static EdidBuilder analog(int revision) {
        return EdidBuilder.analog(revision)
                .videoInput(0x0F)
                .sizeCm(36, 27)
                .established(0xA1, 0x0C, 0x00)
                .standard(1024, 1, 85)
                .detailed(timing(1), 360, 270)
                // E-EDID table 3.27: range limits with a secondary GTF curve.
                .displayDescriptor(0xFD, 0, 50, 120, 30, 96, 14, 0x02, 0, 40, 80, 0x58, 0x02, 128, 40)
                // E-EDID §3.10.3.5: standard timings 9 to 14; §3.10.3.7 a white point is passed over.
                .displayDescriptor(0xFA, 0, 0x61, 0x59, 0x45, 0x59, 0x31, 0x59, 1, 1, 1, 1, 1, 1, 0x0A)
                .displayDescriptor(0xFB, 0, 1, 0, 0, 0, 120);
    }

    private static EdidBuilder everyVic() {
        EdidBuilder edid = EdidBuilder.digital(3).detailed(timing(16), 885, 498);
        List<Integer> numbers = new ArrayList<>();
        for (int vic = 0; vic < 256; vic++) {
            numbers.add(vic);
        }
        for (int first = 0; first < numbers.size(); first += 93) {
            CtaBuilder extension = new CtaBuilder();
            for (int at = first; at < Math.min(numbers.size(), first + 93); at += 31) {
                extension.videoBytes(numbers.subList(at, Math.min(numbers.size(), at + 31)).stream()
                        .mapToInt(Integer::intValue)
                        .toArray());
            }
            edid.extension(extension);
        }
        return edid;
    }

    /** VESA VTB-EXT 1.0, from memory: two detailed timings, one of them empty, two CVT codes and two standard timings. */
    private static EdidBuilder furtherTimings() {
        byte[] block = new byte[EdidReader.BLOCK_BYTES];
        int[] head = {0x10, 1, 2, 2, 2};
        int[] codes = {0x1B, 0x24, 0x3F, 0x7F, 0x14, 0x29, 0x81, 0x80, 0xB3, 0x00};
        for (int i = 0; i < head.length; i++) {
            block[i] = (byte) head[i];
        }
        for (int i = 0; i < codes.length; i++) {
            block[5 + 2 * 18 + i] = (byte) codes[i];
        }
        // A pixel clock of 10 kHz and the counts of nothing; the second stays empty.
        block[5] = 1;
        return EdidBuilder.digital(4).detailed(timing(16), 530, 298).extension(block);
    }

    /** E-EDID §2.2: 255 extensions, here full of detailed timings that differ. */
    private static byte[] longest() {
        EdidBuilder edid = EdidBuilder.digital(4).detailed(timing(16), 885, 498);
        for (int block = 1; block < EdidReader.MOST_BLOCKS; block++) {
            CtaBuilder extension = new CtaBuilder().video(1 + block % 219);
            for (int i = 0; i < 6; i++) {
                extension.detailed(timing(16), block * 6 + i, 498);
            }
            edid.extension(extension);
        }
        return edid.build();
    }

    /** VESA DisplayID 1.3: timings of types I, II, III, V and VI, codes and bits of listed ones, limits. */
    private static EdidBuilder displayId1() {
        return EdidBuilder.digital(4)
                .detailed(timing(16), 530, 298)
                .extension(DisplayIdBuilder.version(0x13)
                        .block(0x03, 1, DisplayIdDescriptors.typeI(timing(16), 4, true))
                        .block(0x04, 0, DisplayIdDescriptors.typeIi(timing(4), false))
                        .block(0x05, 0, DisplayIdDescriptors.typeIii(1280, 4, 60, false, true, false))
                        .block(0x06, 0, new int[] {0x10, 0x52})
                        .block(0x07, 0, new int[10])
                        .block(0x08, 0, new int[] {0xFF, 0x80, 0, 0, 0, 0, 0, 1})
                        .rangeLimits(2500, 15000, 30, 80, 160, 50, 75, 30, 0x80)
                        .build())
                .extension(DisplayIdBuilder.version(0x13)
                        .block(0x11, 0, DisplayIdDescriptors.typeV(2560, 1440, 60, true, false))
                        .block(0x13, 0, DisplayIdDescriptors.typeVi(timing(16), false, true))
                        .build());
    }

    /** VESA DisplayID 2.1a: timings of types VII to X, limits, data blocks of CTA-861; and types inside CTA-861 itself. */
    private static EdidBuilder displayId2() {
        return EdidBuilder.digital(4)
                .detailed(timing(16), 530, 298)
                .extension(DisplayIdBuilder.version(0x20)
                        .block(0x22, 2, DisplayIdDescriptors.typeVii(timing(97), 4, true))
                        .block(0x23, 0, new int[] {0x10, 0x52})
                        .block(0x24, 0, DisplayIdDescriptors.typeIx(2560, 1080, 75, 2, true))
                        .block(0x2A, 0x20, DisplayIdDescriptors.typeX(8, 3, 3840, 1600, 120, 2, 3, true))
                        .dynamicRangeLimits(1, 25_000, 600_000, 48, 300, true)
                        .block(0x81, 0, new int[] {0x43, 0x90, 4, 97})
                        .build())
                .extension(new CtaBuilder().video(16, 97).dataBlock(7, 35, 1, 0x52));
    }

    private static RasterTiming timing(int vic) {
        return Cta861.find(vic).orElseThrow().timing();
    }

    private static Map<String, byte[]> supplied() {
        if (!Files.isDirectory(SUPPLIED)) {
            return Map.of();
        }
        try (Stream<Path> files = Files.list(SUPPLIED)) {
            Map<String, byte[]> edids = new LinkedHashMap<>();
            for (Path file : files.filter(each -> each.toString().endsWith(".edid"))
                    .sorted()
                    .toList()) {
                edids.put(file.getFileName().toString(), Files.readAllBytes(file));
            }
            return edids;
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
