package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.timing.RasterTiming;

/** Whatever the bytes are, reading them ends with a reading that keeps its own rules. */
class BrokenEdidTest {
    @ParameterizedTest
    @CsvSource({
        "0, false",
        "1, false",
        "127, false",
        "128, true",
        "129, false",
        "256, true",
        "32768, true",
        "32896, false"
    })
    void anEdidIs1To256WholeBlocks(int length, boolean expected) {
        // E-EDID §2.2: blocks of 128 bytes, at most 255 extensions (byte 7Eh).
        assertThat(EdidReader.isWholeNumberOfBlocks(length)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 7})
    void lessThanAHeaderHasNone(int length) {
        EdidReading reading = EdidReader.read(Arrays.copyOf(whole(), length));
        assertThat(reading.hasHeader()).isFalse();
        assertThat(codes(reading)).containsExactly(DefectCode.LENGTH_NOT_WHOLE_BLOCKS, DefectCode.HEADER_MISSING);
    }

    @Test
    void lessThanABlockIsNotRead() {
        EdidReading reading = EdidReader.read(Arrays.copyOf(whole(), 127));
        assertThat(reading.hasHeader()).isTrue();
        assertThat(reading.product()).isNull();
        assertThat(reading.timings()).isEmpty();
        assertThat(codes(reading)).containsExactly(DefectCode.LENGTH_NOT_WHOLE_BLOCKS);
    }

    @Test
    void withoutAHeaderNothingIsRead() {
        byte[] edid = whole();
        edid[0] = 1;
        EdidReading reading = EdidReader.read(edid);
        assertThat(reading.hasHeader()).isFalse();
        assertThat(reading.input()).isNull();
        assertThat(reading.timings()).isEmpty();
        assertThat(codes(reading)).containsExactly(DefectCode.HEADER_MISSING);
    }

    @Test
    void aWrongChecksumIsADefectAndTheBlockIsReadAllTheSame() {
        byte[] edid = whole();
        edid[127]++;
        edid[255]++;
        EdidReading reading = EdidReader.read(edid);
        assertThat(reading.timings()).isEqualTo(EdidReader.read(whole()).timings());
        assertThat(reading.defects())
                .extracting(defect -> defect.code() + " " + defect.blockIndex() + " " + defect.byteOffset())
                .containsExactly("CHECKSUM_WRONG 0 127", "CHECKSUM_WRONG 1 127");
    }

    @Test
    void aMissingExtensionIsADefect() {
        EdidReading reading = EdidReader.read(Arrays.copyOf(whole(), 128));
        assertThat(codes(reading)).containsExactly(DefectCode.EXTENSION_COUNT_DIFFERS);
        assertThat(reading.input().link()).isEqualTo(VideoLink.DVI);
    }

    @Test
    void anExtensionCutShortIsLeftOut() {
        EdidReading reading = EdidReader.read(Arrays.copyOf(whole(), 200));
        assertThat(codes(reading))
                .containsExactly(DefectCode.LENGTH_NOT_WHOLE_BLOCKS, DefectCode.EXTENSION_COUNT_DIFFERS);
    }

    @Test
    void anUncountedExtensionIsReadIfItsChecksumIsRight() {
        byte[] edid = EdidBuilder.digital(3)
                .extension(new CtaBuilder().video(16))
                .patch(0x7E, 0)
                .build();
        EdidReading reading = EdidReader.read(edid);
        assertThat(codes(reading)).containsExactly(DefectCode.EXTENSION_COUNT_DIFFERS);
        assertThat(reading.findTiming("vic:16")).isPresent();
        edid[255]++;
        assertThat(EdidReader.read(edid).findTiming("vic:16")).isEmpty();
    }

    @Test
    void paddingBehindTheEdidIsPassedOver() {
        EdidReading reading =
                EdidReader.read(Arrays.copyOf(EdidBuilder.digital(3).build(), 256));
        assertThat(codes(reading)).containsExactly(DefectCode.EXTENSION_COUNT_DIFFERS);
    }

    @Test
    void anotherKindOfExtensionIsNotedAndABlockMapPassedOver() {
        byte[] map = new byte[128];
        map[0] = (byte) 0xF0;
        map[1] = 0x02;
        byte[] other = new byte[128];
        other[0] = 0x40; // VESA display information, which says nothing of timings
        EdidReading reading = EdidReader.read(EdidBuilder.digital(3)
                .extension(map)
                .extension(new CtaBuilder().video(16))
                .extension(other)
                .build());
        assertThat(reading.findTiming("vic:16")).isPresent();
        assertThat(reading.defects()).singleElement().satisfies(defect -> {
            assertThat(defect.code()).isEqualTo(DefectCode.EXTENSION_NOT_READ);
            assertThat(defect.code().isNote()).isTrue();
            assertThat(defect.blockIndex()).isEqualTo(3);
        });
    }

    @Test
    void all256BlocksAreReadAndNoMore() {
        EdidBuilder builder = EdidBuilder.digital(3);
        for (int i = 0; i < 254; i++) {
            builder.extension(new CtaBuilder().video(4));
        }
        builder.extension(new CtaBuilder().video(16));
        byte[] edid = builder.build();
        EdidReading reading = EdidReader.read(edid);
        assertThat(reading.timings().stream().map(AcceptedTiming::label)).containsExactly("vic:4", "vic:16");
        assertThat(reading.defects()).isEmpty();
        EdidReading longer = EdidReader.read(Arrays.copyOf(edid, edid.length + 128));
        assertThat(longer.timings()).isEqualTo(reading.timings());
        assertThat(codes(longer)).containsExactly(DefectCode.TOO_LONG);
    }

    @Test
    void defectsAreBounded() {
        // 255 extensions of 120 reserved descriptors each.
        EdidBuilder builder = EdidBuilder.digital(3);
        for (int i = 0; i < 255; i++) {
            builder.extension(new CtaBuilder()
                    .videoBytes(new int[31])
                    .videoBytes(new int[31])
                    .videoBytes(new int[31]));
        }
        List<EdidDefect> defects = EdidReader.read(builder.build()).defects();
        assertThat(defects).hasSize(DefectLog.MOST);
        assertThat(defects.get(defects.size() - 1).code()).isEqualTo(DefectCode.FURTHER_DEFECTS_OMITTED);
    }

    @Test
    void randomBytesOfEveryLengthAreRead() {
        Random random = new Random(5);
        for (int length = 0; length <= 1024; length++) {
            byte[] edid = new byte[length];
            random.nextBytes(edid);
            checkRules(EdidReader.read(edid));
            byte[] header = EdidBuilder.digital(4).build();
            System.arraycopy(header, 0, edid, 0, Math.min(8, length));
            checkRules(EdidReader.read(edid));
            if (length > 128) {
                // A random extension behind a base block that counts it, tagged as CTA-861 with data blocks.
                System.arraycopy(header, 0, edid, 0, 128);
                edid[0x7E] = (byte) (length / 128 - 1);
                for (int start = 128; start + 4 <= length; start += 128) {
                    edid[start] = 0x02;
                    edid[start + 1] = 0x03;
                    edid[start + 2] &= 0x7F;
                }
                checkRules(EdidReader.read(edid));
            }
        }
    }

    @Test
    void everyTruncationAndEveryFlippedBitIsRead() {
        byte[] edid = whole();
        for (int length = 0; length <= edid.length; length++) {
            checkRules(EdidReader.read(Arrays.copyOf(edid, length)));
        }
        for (int bit = 0; bit < 8 * edid.length; bit++) {
            byte[] flipped = edid.clone();
            flipped[bit / 8] ^= (byte) (1 << bit % 8);
            EdidReading reading = EdidReader.read(flipped);
            checkRules(reading);
            // One flipped bit always breaks the header or a checksum.
            assertThat(codes(reading)).containsAnyOf(DefectCode.HEADER_MISSING, DefectCode.CHECKSUM_WRONG);
        }
    }

    @Test
    void manyFlippedBitsAreRead() {
        Random random = new Random(6);
        for (int round = 0; round < 20_000; round++) {
            byte[] edid = whole();
            for (int flips = random.nextInt(64); flips >= 0; flips--) {
                // The header stays, or nothing would be read.
                edid[8 + random.nextInt(edid.length - 8)] = (byte) random.nextInt();
            }
            checkRules(EdidReader.read(random.nextBoolean() ? EdidBuilder.withChecksums(edid) : edid));
        }
    }

    @Test
    void theSameBytesGiveTheSameReading() {
        assertThat(EdidReader.read(whole())).isEqualTo(EdidReader.read(whole()));
    }

    /** Reading every derived value also proves that no raster was built that has no rates. */
    private static void checkRules(EdidReading reading) {
        assertThat(reading.defects()).hasSizeLessThanOrEqualTo(DefectLog.MOST);
        assertThat(reading.hasHeader() || reading.timings().isEmpty()).isTrue();
        Set<String> labels = new HashSet<>();
        for (AcceptedTiming timing : reading.timings()) {
            assertThat(labels.add(timing.label()))
                    .as("%s is unique", timing.label())
                    .isTrue();
            for (RasterTiming raster : timing.acceptedRasters()) {
                assertThat(raster.fieldRate().hz().signum()).isPositive();
                assertThat(raster.verticalTotal()).isGreaterThan(raster.verticalActive());
            }
        }
        for (EdidDefect defect : reading.defects()) {
            assertThat(defect.message()).isNotBlank();
            assertThat(defect.blockIndex()).isBetween(0, 256);
            assertThat(defect.byteOffset()).isBetween(0, 127);
        }
    }

    private static List<DefectCode> codes(EdidReading reading) {
        return reading.defects().stream().map(EdidDefect::code).toList();
    }

    /** An invented television with one of everything. */
    private static byte[] whole() {
        return EdidBuilder.digital(4)
                .product("RFT", 40)
                .sizeCm(89, 50)
                .established(0x21, 0x08, 0x00)
                .standard(1280, 3, 60)
                .detailed(DetailedTimingTest.vic(16), 885, 498)
                .detailed(DetailedTimingTest.vic(5), 885, 498)
                .rangeLimits(48, 62, 15, 70, 150)
                .name("Lowick 40")
                .extension(new CtaBuilder()
                        .flags(0xF1)
                        .videoBytes(0x90, 4, 31, 19, 3, 18, 8, 23)
                        .dataBlock(1, 0x09, 0x07, 0x07)
                        .hdmiWithVics(225, 1, 2)
                        .hdmiForum(600)
                        .dataBlock(7, 5, 0x80, 0x00)
                        .detailed(DetailedTimingTest.vic(4), 885, 498))
                .build();
    }
}
