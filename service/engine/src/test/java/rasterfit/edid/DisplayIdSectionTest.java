package rasterfit.edid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;
import rasterfit.timing.HdmiVideo;
import rasterfit.timing.RasterTiming;

/** Sections (DisplayID 1.3, 2.1a), codes, limits, and the blocks that CTA-861-I carries. */
class DisplayIdSectionTest {
    private static final RasterTiming FIRST = Dmt.find(0x52).orElseThrow().timing();
    private static final int[] TYPE_VII = DisplayIdDescriptors.typeVii(FIRST, 4, true);

    private final DefectLog log = new DefectLog();

    @Test
    void timingsComeInTheOrderOfTheBlocks() {
        DisplayIdSection section = read(DisplayIdBuilder.version(0x20)
                .block(0x24, 0, DisplayIdDescriptors.typeIx(1400, 1050, 60, 1, false))
                .block(0x7E, 0, new int[] {1, 2, 3, 4})
                .block(0x22, 1, TYPE_VII)
                .block(0x23, 0, new int[] {0x10}));
        assertThat(section.version()).isEqualTo(2);
        assertThat(section.timings()).extracting(DisplayIdTiming::timing).containsExactly(dmt(0x29), FIRST, dmt(0x10));
        assertThat(section.rangeLimits()).isNull();
        assertThat(log.defects()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {0x00, 0x30, 0x70, 0xFF})
    void aSectionOfAnotherVersionIsLeftOut(int version) {
        DisplayIdSection section = read(DisplayIdBuilder.version(version).block(0x23, 0, new int[] {0x10}));
        assertThat(section.timings()).isEmpty();
        assertDefects(DefectCode.EXTENSION_NOT_READ);
    }

    @Test
    void aWrongChecksumIsADefectAndTheSectionIsRead() {
        byte[] block =
                DisplayIdBuilder.version(0x12).block(0x07, 0, bitmap(10, 0x10)).build();
        block[126]++;
        assertThat(read(block).timings()).hasSize(1);
        assertDefects(DefectCode.CHECKSUM_WRONG);
    }

    @Test
    void aShortSectionHasItsChecksumRightBehindItsData() {
        byte[] block = new byte[128];
        int[] section = {0x70, 0x12, 4, 0, 0, 0x06, 0, 1, 0x10, 256 - (0x12 + 4 + 6 + 1 + 0x10)};
        for (int i = 0; i < section.length; i++) {
            block[i] = (byte) section[i];
        }
        assertThat(read(block).timings()).extracting(DisplayIdTiming::timing).containsExactly(dmt(0x10));
        assertThat(log.defects()).isEmpty();
    }

    @Test
    void aLengthBeyondTheExtensionIsCutOff() {
        byte[] block =
                DisplayIdBuilder.version(0x12).block(0x07, 0, bitmap(10, 0x10)).build();
        block[2] = (byte) 122;
        assertThat(read(block).timings()).hasSize(1);
        assertDefects(DefectCode.EXTENSION_LAYOUT_INVALID);
    }

    @Test
    void aBlockThatDoesNotFitEndsTheReading() {
        DisplayIdSection section = read(
                DisplayIdBuilder.version(0x12).block(0x06, 0, new int[] {0x10}).bytes(0x06, 0, 115));
        assertThat(section.timings()).hasSize(1);
        assertDefects(DefectCode.DATA_BLOCK_OVERRUN);
    }

    @Test
    void aBlockMayReachToTheEnd() {
        assertThat(read(DisplayIdBuilder.version(0x12).block(0x06, 0, filled(118, 0x10)))
                        .timings())
                .hasSize(118);
        assertThat(log.defects()).isEmpty();
    }

    @Test
    void onlyZerosFillASection() {
        read(DisplayIdBuilder.version(0x12).block(0x06, 0, new int[] {0x10}).bytes(0, 0, 0, 0x22));
        read(DisplayIdBuilder.version(0x12).block(0x06, 0, filled(116, 0x10)).bytes(0x22));
        read(DisplayIdBuilder.version(0x12).block(0x06, 0, filled(116, 0x10)).bytes(0, 0x22));
        assertDefects(
                DefectCode.EXTENSION_LAYOUT_INVALID,
                DefectCode.EXTENSION_LAYOUT_INVALID,
                DefectCode.EXTENSION_LAYOUT_INVALID);
    }

    @Test
    void blocksThatConcernTimingsAndAreNotReadAreNoted() {
        read(DisplayIdBuilder.version(0x20)
                .block(0x26, 0, new int[9])
                .block(0x2B, 0, new int[6])
                .block(0x21, 0, new int[29])
                .block(0x29, 0, new int[16]));
        assertDefects(DefectCode.DATA_BLOCK_NOT_READ, DefectCode.DATA_BLOCK_NOT_READ);
        assertThat(log.defects()).extracting(EdidDefect::byteOffset).containsExactly(5, 17);
    }

    @Test
    void ctaDataBlocksAreReadAsSuch() {
        DisplayIdSection section = read(DisplayIdBuilder.version(0x13).block(0x81, 0, new int[] {0x42, 0x90, 31}));
        assertThat(section.ctaDataBlocks()).hasSize(1);
        assertThat(section.ctaDataBlocks().get(0).videos())
                .extracting(CtaDataBlocks.ShortVideo::vic)
                .containsExactly(16, 31);
        assertThat(log.defects()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0x06, 0x00, DMT", "0x06, 0x40, CTA_861", "0x06, 0x80, HDMI", "0x23, 0x40, CTA_861", "0x23, 0x80, HDMI"
    })
    void bits7And6SayWhatTheCodesAre(int tag, int flags, TimingBasis basis) {
        List<DisplayIdTiming> timings = read(DisplayIdBuilder.version(0x13).block(tag, flags, new int[] {2}))
                .timings();
        RasterTiming expected = switch (basis) {
            case DMT -> dmt(2);
            case HDMI -> HdmiVideo.find(2).orElseThrow().timing();
            default -> Cta861.find(2).orElseThrow().timing();
        };
        assertThat(timings).containsExactly(new DisplayIdTiming(expected, basis, 2, false, Chroma420.NOT_LISTED));
    }

    @Test
    void codesOfTwoBytesComeLowByteFirst() {
        assertThat(read(DisplayIdBuilder.version(0x20).block(0x23, 0x48, new int[] {16, 0, 16, 1}))
                        .timings())
                .extracting(DisplayIdTiming::code)
                .containsExactly(16, 272);
        assertDefects(DefectCode.VIC_UNKNOWN);
    }

    @Test
    void reservedCodesAreLeftOutAndUnknownOnesKeptWithoutARaster() {
        DisplayIdSection section = read(
                DisplayIdBuilder.version(0x20).block(0x23, 0xC0, new int[] {1}).block(0x23, 0, new int[] {0, 0x59}));
        assertThat(section.timings())
                .containsExactly(new DisplayIdTiming(null, TimingBasis.DMT, 0x59, false, Chroma420.NOT_LISTED));
        assertDefects(DefectCode.DATA_BLOCK_NOT_READ, DefectCode.VIC_RESERVED, DefectCode.VIC_UNKNOWN);
        assertThat(section.timings().get(0).accepted(1).basis()).isEqualTo(TimingBasis.UNKNOWN);
    }

    @ParameterizedTest
    @CsvSource({"0x60, NOT_LISTED", "0x61, ALSO", "0x41, NOT_LISTED"})
    void typeViiiSays420ForAllItsTimingsSinceRevision1(int flags, Chroma420 chroma420) {
        assertThat(read(DisplayIdBuilder.version(0x20).block(0x23, flags, new int[] {97, 96}))
                        .timings())
                .extracting(DisplayIdTiming::chroma420)
                .containsExactly(chroma420, chroma420);
    }

    @Test
    void bitmapsBeginWithNumber1InBit0() {
        assertThat(read(DisplayIdBuilder.version(0x12)
                                .block(0x07, 0, bitmap(10, 1, 8, 9, 80))
                                .block(0x08, 0, bitmap(8, 1, 64)))
                        .timings())
                .extracting(DisplayIdTiming::code)
                .containsExactly(1, 8, 9, 80, 1, 64);
        assertThat(log.defects()).isEmpty();
        assertThat(read(DisplayIdBuilder.version(0x12).block(0x07, 0, bitmap(9, 72)))
                        .timings())
                .extracting(DisplayIdTiming::code)
                .containsExactly(72);
        assertDefects(DefectCode.DATA_BLOCK_TOO_SHORT);
    }

    @Test
    void rangeLimitsOf1XCountIn10KilohertzAndSayTheFormulas() {
        DisplayIdRangeLimits limits = read(DisplayIdBuilder.version(0x12)
                        .rangeLimits(2500, 30_000, 30, 160, 80, 48, 144, 23, 0x90)
                        .rangeLimits(1, 2, 3, 4, 5, 6, 7, 8, 0))
                .rangeLimits();
        assertThat(limits)
                .isEqualTo(new DisplayIdRangeLimits(
                        mhz(25),
                        mhz(300),
                        Frequency.ofHz(48),
                        Frequency.ofHz(144),
                        new DisplayIdRangeLimits.LineLimits(
                                Frequency.ofHz(30_000), Frequency.ofHz(160_000), 80, 23, true, false, false, true),
                        false));
        assertThat(read(DisplayIdBuilder.version(0x12).rangeLimits(1, 2, 3, 4, 5, 6, 7, 8, 0x60))
                        .rangeLimits()
                        .lines())
                .isEqualTo(new DisplayIdRangeLimits.LineLimits(
                        Frequency.ofHz(3000), Frequency.ofHz(4000), 5, 8, false, true, true, false));
    }

    @ParameterizedTest
    @CsvSource({"0, 44", "1, 300"})
    void dynamicRangeLimitsHaveTenBitsOfRateSinceRevision1(int revision, int maxHz) {
        assertThat(read(DisplayIdBuilder.version(0x20).dynamicRangeLimits(revision, 25_000, 600_000, 40, 300, true))
                        .rangeLimits())
                .isEqualTo(new DisplayIdRangeLimits(
                        mhz(25), mhz(600), Frequency.ofHz(40), Frequency.ofHz(maxHz), null, true));
        // Without line rates nothing can be concluded from them, which is told.
        assertDefects(DefectCode.DATA_BLOCK_NOT_READ);
    }

    @Test
    void limitsThatContainNothingAreLeftOut() {
        assertThat(read(DisplayIdBuilder.version(0x12).rangeLimits(30_001, 30_000, 30, 160, 80, 48, 144, 23, 0))
                        .rangeLimits())
                .isNull();
        assertThat(read(DisplayIdBuilder.version(0x12).rangeLimits(2500, 30_000, 161, 160, 80, 48, 144, 23, 0))
                        .rangeLimits())
                .isNull();
        assertThat(read(DisplayIdBuilder.version(0x20).dynamicRangeLimits(1, 25_000, 600_000, 201, 200, false))
                        .rangeLimits())
                .isNull();
        assertDefects(
                DefectCode.RANGE_LIMITS_IMPOSSIBLE,
                DefectCode.RANGE_LIMITS_IMPOSSIBLE,
                DefectCode.RANGE_LIMITS_IMPOSSIBLE);
    }

    @Test
    void limitsThatAreTooShortAreLeftOut() {
        assertThat(read(DisplayIdBuilder.version(0x20)
                                .block(0x25, 1, new int[8])
                                .block(0x09, 0, new int[14]))
                        .rangeLimits())
                .isNull();
        assertDefects(DefectCode.DATA_BLOCK_TOO_SHORT, DefectCode.DATA_BLOCK_TOO_SHORT);
    }

    /** CTA-861-I table 64: 34, 35 and 42 stand for types VII, VIII and X; type VII is of revision 2 there. */
    @Test
    void ctaCarriesTypesViiViiiAndX() {
        assertThat(ofCta(34, join(new int[] {0x02}, TYPE_VII)))
                .containsExactly(new DisplayIdTiming(FIRST, TimingBasis.STATED, null, false, Chroma420.ALSO));
        assertThat(ofCta(34, join(new int[] {0x00}, TYPE_VII)))
                .extracting(DisplayIdTiming::chroma420)
                .containsExactly(Chroma420.ALSO);
        assertThat(ofCta(35, new int[] {0x21, 0x52, 0x10}))
                .containsExactly(
                        new DisplayIdTiming(FIRST, TimingBasis.DMT, 0x52, false, Chroma420.ALSO),
                        new DisplayIdTiming(dmt(0x10), TimingBasis.DMT, 0x10, false, Chroma420.ALSO));
        assertThat(ofCta(42, join(new int[] {0x10}, DisplayIdDescriptors.typeX(7, 0x01, 1400, 1050, 60, 0, 0, false))))
                .extracting(DisplayIdTiming::timing)
                .containsExactly(dmt(0x29));
        assertThat(log.defects()).isEmpty();
        assertThat(ofCta(34, new int[0])).isEmpty();
        assertDefects(DefectCode.DATA_BLOCK_TOO_SHORT);
    }

    @Test
    void noBytesMakeTheReaderFail() {
        Random random = new Random(70);
        int[] tags = {3, 4, 5, 6, 7, 8, 9, 0x11, 0x13, 0x22, 0x23, 0x24, 0x25, 0x26, 0x2A, 0x2B, 0x81};
        int read = 0;
        for (int i = 0; i < 20_000; i++) {
            byte[] block = new byte[128];
            random.nextBytes(block);
            block[0] = 0x70;
            block[1] = (byte) (random.nextBoolean() ? 0x13 : 0x21);
            block[5] = (byte) tags[random.nextInt(tags.length)];
            block[7] = (byte) random.nextInt(130);
            read += DisplayIdSection.read(new Block(block, 0), new DefectLog())
                    .timings()
                    .size();
        }
        assertThat(read).isPositive();
    }

    private List<DisplayIdTiming> ofCta(int extendedTag, int[] payload) {
        byte[] block = new byte[128];
        for (int i = 0; i < payload.length; i++) {
            block[6 + i] = (byte) payload[i];
        }
        return DisplayIdTimings.ofCta(new Block(block, 0), extendedTag, 6, payload.length, log);
    }

    private DisplayIdSection read(DisplayIdBuilder section) {
        return read(section.build());
    }

    private DisplayIdSection read(byte[] block) {
        return DisplayIdSection.read(new Block(block, 0), log);
    }

    private void assertDefects(DefectCode... codes) {
        assertThat(log.defects()).extracting(EdidDefect::code).containsExactly(codes);
    }

    private static RasterTiming dmt(int id) {
        return Dmt.find(id).orElseThrow().timing();
    }

    private static Frequency mhz(int mhz) {
        return Frequency.ofHz(mhz * 1_000_000L);
    }

    private static int[] bitmap(int bytes, int... numbers) {
        int[] bitmap = new int[bytes];
        for (int number : numbers) {
            bitmap[(number - 1) / 8] |= 1 << ((number - 1) % 8);
        }
        return bitmap;
    }

    private static int[] filled(int length, int value) {
        int[] bytes = new int[length];
        Arrays.fill(bytes, value);
        return bytes;
    }

    private static int[] join(int[] one, int[] other) {
        int[] joined = Arrays.copyOf(one, one.length + other.length);
        System.arraycopy(other, 0, joined, one.length, other.length);
        return joined;
    }
}
