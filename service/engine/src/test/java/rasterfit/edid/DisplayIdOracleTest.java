package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rasterfit.EdidDecode;
import rasterfit.Tables;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Border;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;
import rasterfit.timing.Polarity;
import rasterfit.timing.PrintedTiming;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;
import rasterfit.timing.VideoTiming;

/**
 * Every timing of a DisplayID section against {@code edid-decode}. What differs, and why:
 *
 * <ul>
 *   <li>type II: the tool takes the vertical polarity from a byte behind the descriptor; bit 2 of the options has it;
 *   <li>type III: the tool passes over the bit that says interlaced;
 *   <li>types V and IX: the tool prints a remark for the further timing at 1000/1001 of the rate, not the timing;
 *   <li>type X: the Debian build does not know the tag (checked in {@link DisplayIdFormulaTest});
 *   <li>DMT 43h and 4Bh are wrong in its table (VESA DMT 1.13);
 *   <li>type IX: the tool prints widths that are no whole cells as they are, having computed with whole cells (CVT 1.2 §5.2);
 *   <li>types III, V and IX: its clock is computed in binary fractions and can fall one step short (250 kHz; 1 kHz in reduced
 *       blanking v2).
 * </ul>
 */
class DisplayIdOracleTest {
    private static final int SECTIONS = 400;
    /** Of the first data block of an EDID whose second block is a section. */
    private static final int FIRST_TAG = 128 + 5;

    private static final long SEED = 20_240_607;

    @TempDir
    @Nullable
    Path folder;

    @Test
    void everySuppliedSectionGivesTheTimingsThatTheToolPrints() throws IOException {
        Path supplied = Tables.sharedFile("edid");
        Map<Path, byte[]> edids = new LinkedHashMap<>();
        for (Map<String, String> row : Tables.shared("edid/manifest.tsv")) {
            if (row.get("displayid").equals("1")) {
                Path file = supplied.resolve(row.get("id") + ".edid");
                edids.put(file, Files.readAllBytes(file));
            }
        }
        assertThat(edids).hasSize(6);
        assertThat(compare(edids)).isEqualTo(24);
    }

    @Test
    void hundredsOfRandomSectionsGiveTheTimingsThatTheToolPrints() throws IOException {
        Random random = new Random(SEED);
        Map<Path, byte[]> edids = new LinkedHashMap<>();
        for (int i = 0; i < SECTIONS; i++) {
            byte[] edid = edid(section(random, i % KINDS.size()));
            Path file = folder.resolve("section" + i);
            Files.write(file, edid);
            edids.put(file, edid);
        }
        assertThat(compare(edids)).isGreaterThan(2 * SECTIONS);
    }

    @Test
    void timingBlocksInsideCta861GiveTheTimingsThatTheToolPrints() throws IOException {
        Random random = new Random(SEED);
        Map<Path, byte[]> edids = new LinkedHashMap<>();
        for (int i = 0; i < 100; i++) {
            CtaBuilder cta = i % 2 == 0
                    ? cta(
                            34,
                            2,
                            DisplayIdDescriptors.typeVii(
                                    timing(random, 1000, 32768, 32768), random.nextInt(9), random.nextBoolean()))
                    : cta(35, 1, new int[] {dmt(random)});
            Path file = folder.resolve("cta" + i);
            edids.put(file, EdidBuilder.digital(4).name("cta").extension(cta).build());
            Files.write(file, edids.get(file));
        }
        assertThat(compare(edids)).isEqualTo(100);
    }

    /** One data block: extended tag, revision and flags, a descriptor. */
    private static CtaBuilder cta(int extendedTag, int flags, int[] descriptor) {
        int[] payload = new int[2 + descriptor.length];
        payload[0] = extendedTag;
        payload[1] = flags;
        System.arraycopy(descriptor, 0, payload, 2, descriptor.length);
        return new CtaBuilder().dataBlock(7, payload);
    }

    /** The number of timings compared. */
    private static int compare(Map<Path, byte[]> edids) {
        // 254 means that the EDID breaks a rule; these have no product identity, for instance.
        List<String> lines = EdidDecode.linesOfCalls(edids.keySet().stream()
                .map(file -> "-L \"" + file + "\" || test $? -eq 254; echo end of EDID")
                .toList());
        int compared = 0;
        int from = 0;
        for (Map.Entry<Path, byte[]> edid : edids.entrySet()) {
            int end = from + lines.subList(from, lines.size()).indexOf("end of EDID");
            List<PrintedTiming> printed = PrintedTiming.among(displayId(lines.subList(from, end)));
            List<DisplayIdTiming> read = read(edid.getValue());
            assertThat(read).as("%s: %s", edid.getKey(), printed).hasSameSizeAs(printed);
            boolean isTypeIi = edid.getValue()[FIRST_TAG] == DisplayIdBlock.TYPE_II;
            for (int i = 0; i < read.size(); i++) {
                check(edid.getKey() + ", timing " + (i + 1), read.get(i), printed.get(i), isTypeIi);
                compared++;
            }
            from = end + 1;
        }
        return compared;
    }

    /** The lines of DisplayID sections, and of DisplayID timing blocks inside CTA-861, whose headings are indented by 2. */
    private static List<String> displayId(List<String> lines) {
        List<String> sections = new ArrayList<>();
        boolean isSection = false;
        boolean isInside = false;
        for (String line : lines) {
            if (line.startsWith("Block ")) {
                isSection = line.contains("DisplayID Extension Block");
            }
            if (isSection || line.matches(" {2}\\S.*")) {
                isInside = isSection || line.contains("DisplayID Type");
            }
            if (isInside) {
                sections.add(line);
            }
        }
        return sections;
    }

    private static List<DisplayIdTiming> read(byte[] edid) {
        List<DisplayIdTiming> timings = new ArrayList<>();
        DefectLog log = new DefectLog();
        for (int index = 1; index < edid.length / Block.BYTES; index++) {
            Block block = new Block(edid, index);
            if (block.at(0) == DisplayIdSection.EXTENSION_TAG) {
                timings.addAll(DisplayIdSection.read(block, log).timings());
            } else if (block.at(0) == CtaExtension.TAG) {
                timings.addAll(ofCta(block, log));
            }
        }
        assertThat(log.defects()).allMatch(defect -> defect.code().isNote());
        return timings;
    }

    /** CTA-861-I tables 60, 61 and 64: data blocks from byte 4 on, extended ones of tag 7. */
    private static List<DisplayIdTiming> ofCta(Block block, DefectLog log) {
        List<DisplayIdTiming> timings = new ArrayList<>();
        int length;
        for (int offset = 4; offset < block.at(2); offset += 1 + length) {
            length = block.at(offset) & 31;
            int extendedTag = block.at(offset) >> 5 == 7 ? block.at(offset + 1) : 0;
            if (extendedTag == 34 || extendedTag == 35) {
                timings.addAll(DisplayIdTimings.ofCta(block, extendedTag, offset + 2, length - 1, log));
            }
        }
        return timings;
    }

    private static void check(String what, DisplayIdTiming read, PrintedTiming printed, boolean isTypeIi) {
        RasterTiming ours = read.timing();
        assertThat(ours).as(what).isNotNull();
        Rational clockHz = printed.pixelClockHz();
        if (printed.name().equals("CVT")) {
            long stepHz = printed.remark().contains("RBv2") ? 1000 : 250_000;
            assertThat(ours.pixelClock().hz().minus(clockHz)).as(what).isIn(Rational.ZERO, Rational.of(stepHz));
            ours = ours.atPixelClock(new Frequency(clockHz));
        }
        Border border = new Border(printed.horizontalBorder(), printed.verticalBorder());
        Set<String> known = isTypeIi ? Set.of("vertical polarity") : Set.of();
        assertThat(printed.differingFrom(ours, border, Rational.ZERO))
                .as("%s: %s", what, printed)
                .isSubsetOf(known);
        assertThat(ours.horizontalActive()).as(what).isEqualTo(printed.horizontalActive());
        assertThat(ours.verticalActive()).as(what).isEqualTo(printed.verticalActive());
        assertThat(read.preferred()).as(what).isEqualTo(printed.remark().contains("preferred"));
        boolean is420 = printed.remark().contains("YCbCr 4:2:0");
        assertThat(read.chroma420()).as(what).isEqualTo(is420 ? Chroma420.ALSO : Chroma420.NOT_LISTED);
    }

    private static byte[] edid(DisplayIdBuilder section) {
        RasterTiming first = Dmt.find(0x52).orElseThrow().timing();
        return EdidBuilder.digital(4)
                .sizeCm(50, 30)
                .detailed(first, 500, 300)
                .name("section")
                .extension(section.build())
                .build();
    }

    /** One block each, as full as a random number makes it. */
    private static final List<Function<Random, DisplayIdBuilder>> KINDS = List.of(
            random -> DisplayIdBuilder.version(0x12)
                    .block(
                            0x03,
                            1,
                            many(
                                    random,
                                    5,
                                    r -> DisplayIdDescriptors.typeI(
                                            timing(r, 10_000, 32768, 32768), r.nextInt(6), r.nextBoolean()))),
            random -> DisplayIdBuilder.version(0x12)
                    .block(0x04, 0, many(random, 10, r -> DisplayIdDescriptors.typeIi(typeIi(r), r.nextBoolean()))),
            random -> DisplayIdBuilder.version(0x12)
                    .block(
                            0x05,
                            1,
                            many(
                                    random,
                                    39,
                                    r -> DisplayIdDescriptors.typeIii(
                                            8 * (20 + r.nextInt(237)),
                                            r.nextInt(8),
                                            1 + r.nextInt(128),
                                            false,
                                            r.nextBoolean(),
                                            r.nextBoolean()))),
            random -> DisplayIdBuilder.version(0x13).block(0x06, 0x01, many(random, 30, r -> new int[] {dmt(r)})),
            random -> DisplayIdBuilder.version(0x13).block(0x06, 0x41, many(random, 30, r -> new int[] {vic(r)})),
            random -> DisplayIdBuilder.version(0x13).block(0x06, 0x81, many(random, 4, r ->
                    new int[] {1 + r.nextInt(4)})),
            random -> DisplayIdBuilder.version(0x12).block(0x07, 0, bitmap(random, 10, 0x43, 0x4B)),
            random -> DisplayIdBuilder.version(0x12).block(0x08, 0, bitmap(random, 8, 39)),
            random -> DisplayIdBuilder.version(0x13)
                    .block(
                            0x11,
                            0,
                            many(
                                    random,
                                    16,
                                    r -> DisplayIdDescriptors.typeV(
                                            160 + r.nextInt(8000),
                                            120 + r.nextInt(5000),
                                            1 + r.nextInt(256),
                                            false,
                                            r.nextBoolean()))),
            random -> DisplayIdBuilder.version(0x13)
                    .block(
                            0x13,
                            0,
                            many(
                                    random,
                                    6,
                                    r -> DisplayIdDescriptors.typeVi(typeVi(r), r.nextBoolean(), r.nextBoolean()))),
            random -> DisplayIdBuilder.version(0x20)
                    .block(
                            0x22,
                            random.nextInt(3),
                            many(
                                    random,
                                    5,
                                    r -> DisplayIdDescriptors.typeVii(
                                            timing(r, 1000, 32768, 32768), r.nextInt(9), r.nextBoolean()))),
            random -> DisplayIdBuilder.version(0x20).block(0x23, 0x40, many(random, 30, r -> new int[] {vic(r)})),
            random -> DisplayIdBuilder.version(0x20).block(0x23, 0x09, many(random, 30, r -> new int[] {dmt(r), 0})),
            random -> DisplayIdBuilder.version(0x20).block(0x24, 0, many(random, 19, DisplayIdOracleTest::typeIx)));

    private static DisplayIdBuilder section(Random random, int kind) {
        return KINDS.get(kind).apply(random);
    }

    private static int[][] many(Random random, int most, Function<Random, int[]> descriptor) {
        return IntStream.range(0, 1 + random.nextInt(most))
                .mapToObj(i -> descriptor.apply(random))
                .toArray(int[][]::new);
    }

    /** Sync and porches from 1 up; an interlaced frame ends its fields on half a line. */
    private static RasterTiming timing(Random random, int unitHz, int mostPixels, int mostLines) {
        return timing(
                Frequency.ofHz(unitHz).times(1 + random.nextInt(1 << 24)),
                random,
                new int[] {2 * mostPixels, mostPixels, mostPixels / 2, mostPixels / 2},
                1,
                new int[] {mostLines, mostLines / 2, mostLines / 4, mostLines / 4});
    }

    /** Type II: cells of 8; 4 bits for porch and sync, 8 for vertical blanking, 12 for lines. */
    private static RasterTiming typeIi(Random random) {
        return timing(
                Frequency.ofHz(10_000).times(1 + random.nextInt(1 << 24)),
                random,
                new int[] {512, 16, 16, 96},
                8,
                new int[] {2048, 8, 8, 100});
    }

    /** Whole cells for ordinary and reduced blanking; v2 takes any width. */
    private static int[] typeIx(Random random) {
        int formula = random.nextInt(3);
        int width = 160 + random.nextInt(8000);
        return DisplayIdDescriptors.typeIx(
                formula == 2 ? width : width / 8 * 8,
                120 + random.nextInt(5000),
                1 + random.nextInt(256),
                formula,
                false);
    }

    /** Type VI: 22 bits of clock, 14 of sizes, 12 of horizontal and 8 of vertical blanking. */
    private static RasterTiming typeVi(Random random) {
        return timing(
                Frequency.ofHz(1000).times(1 + random.nextInt(1 << 22)),
                random,
                new int[] {16384, 2000, 256, 1800},
                1,
                new int[] {8192, 40, 8, 60});
    }

    /** @param horizontal the most active, front porch, sync and back porch, in units of {@code cell} */
    private static RasterTiming timing(Frequency clock, Random random, int[] horizontal, int cell, int[] vertical) {
        Scan scan = random.nextInt(4) == 0 ? Scan.INTERLACED : Scan.PROGRESSIVE;
        int fields = scan.fieldsPerFrame();
        int active = fields * (1 + random.nextInt(vertical[0]));
        int porch = 1 + random.nextInt(vertical[1]);
        int sync = 1 + random.nextInt(vertical[2]);
        int back = random.nextInt(vertical[3]);
        return new RasterTiming(
                clock,
                cell * (1 + random.nextInt(horizontal[0])),
                cell * (1 + random.nextInt(horizontal[1])),
                cell * (1 + random.nextInt(horizontal[2])),
                cell * random.nextInt(horizontal[3]),
                active,
                porch,
                sync,
                back,
                active + fields * (porch + sync + back) + fields - 1,
                scan,
                random.nextBoolean() ? Polarity.POSITIVE : Polarity.NEGATIVE,
                random.nextBoolean() ? Polarity.POSITIVE : Polarity.NEGATIVE);
    }

    private static int dmt(Random random) {
        int id = 1 + random.nextInt(0x58);
        return id == 0x43 || id == 0x4B ? 0x42 : id;
    }

    /** VIC 39 apart, whose fields are whole: how the tool prints that is another matter. */
    private static int vic(Random random) {
        List<VideoTiming> all = Cta861.all();
        int vic = all.get(random.nextInt(all.size())).vic();
        return vic == 39 ? 40 : vic;
    }

    private static int[] bitmap(Random random, int bytes, int... without) {
        int[] bitmap = new int[bytes];
        for (int i = 0; i < bytes; i++) {
            bitmap[i] = random.nextInt(256);
        }
        for (int number : without) {
            bitmap[(number - 1) / 8] &= ~(1 << ((number - 1) % 8));
        }
        return bitmap;
    }
}
