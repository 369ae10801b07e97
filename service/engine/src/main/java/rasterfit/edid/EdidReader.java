package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/** Reads EDID 1.0 to 1.4 (VESA E-EDID release A2) with CTA-861 extensions. */
public final class EdidReader {
    public static final int BLOCK_BYTES = Block.BYTES;
    public static final int MOST_BLOCKS = 256;

    /** What a digital link carries at least without further declaration (HDMI 1.3a §8.3). */
    public static final Frequency PLAIN_TMDS_CLOCK = Frequency.ofHz(165_000_000);

    private static final int[] HEADER = {0x00, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x00};
    private static final int EXTENSION_COUNT_OFFSET = 0x7E;
    private static final int CHECKSUM_OFFSET = 0x7F;

    /** Block map: says where the other tags are, which each block says itself. */
    private static final int TAG_BLOCK_MAP = 0xF0;

    private EdidReader() {}

    /** Whether this many bytes are 1 to 256 whole blocks. */
    public static boolean isWholeNumberOfBlocks(int length) {
        return length > 0 && length % BLOCK_BYTES == 0 && length / BLOCK_BYTES <= MOST_BLOCKS;
    }

    /** Reads whatever the bytes hold. Never throws; what is wrong is in {@link EdidReading#defects}. */
    public static EdidReading read(byte[] edid) {
        DefectLog log = new DefectLog();
        boolean hasHeader = hasHeader(edid);
        int blocks = wholeBlocks(edid, log);
        if (!hasHeader) {
            log.add(DefectCode.HEADER_MISSING, 0, 0, "the data do not begin with 00 FF FF FF FF FF FF 00");
        }
        if (!hasHeader || blocks == 0) {
            return EdidReading.unreadable(hasHeader, log.defects());
        }
        Block first = new Block(edid, 0);
        checkSum(first, log);
        BaseBlock base = BaseBlock.read(first, log);
        List<CtaExtension> extensions = extensions(edid, blocks, log);
        HdmiBlock hdmi = first(
                extensions.stream().map(extension -> extension.dataBlocks().hdmi()));
        HdmiForumBlock forum = first(
                extensions.stream().map(extension -> extension.dataBlocks().hdmiForum()));
        CtaFlags flags = first(extensions.stream().map(CtaExtension::flags));
        return new EdidReading(
                true,
                base.product(),
                input(base, hdmi, forum, flags, log),
                ListedTimings.of(base, extensions, hdmi),
                base.descriptors().rangeLimits(),
                base.continuousFrequency(),
                base.defaultGtf(),
                base.screen(),
                log.defects());
    }

    private static boolean hasHeader(byte[] edid) {
        if (edid.length < HEADER.length) {
            return false;
        }
        for (int i = 0; i < HEADER.length; i++) {
            if ((edid[i] & 0xFF) != HEADER[i]) {
                return false;
            }
        }
        return true;
    }

    private static int wholeBlocks(byte[] edid, DefectLog log) {
        int blocks = edid.length / BLOCK_BYTES;
        int rest = edid.length % BLOCK_BYTES;
        if (rest != 0 || blocks == 0) {
            log.add(
                    DefectCode.LENGTH_NOT_WHOLE_BLOCKS,
                    Math.min(blocks, MOST_BLOCKS),
                    0,
                    edid.length + " bytes are not a number of whole blocks of " + BLOCK_BYTES);
        }
        if (blocks > MOST_BLOCKS) {
            log.add(DefectCode.TOO_LONG, MOST_BLOCKS, 0, blocks + " blocks are more than " + MOST_BLOCKS);
        }
        return Math.min(blocks, MOST_BLOCKS);
    }

    private static boolean checkSum(Block block, DefectLog log) {
        boolean isRight = block.hasRightChecksum();
        if (!isRight) {
            log.add(
                    DefectCode.CHECKSUM_WRONG,
                    block,
                    CHECKSUM_OFFSET,
                    "the bytes of block " + block.index() + " do not add up to 0 modulo 256");
        }
        return isRight;
    }

    /**
     * Every CTA-861 extension that is there. Blocks past the count of the base block are read if their checksum is right:
     * displays with a wrong count exist, and so do readers that fill the end with anything (common practice).
     */
    private static List<CtaExtension> extensions(byte[] edid, int blocks, DefectLog log) {
        int declared = new Block(edid, 0).at(EXTENSION_COUNT_OFFSET);
        if (declared != blocks - 1) {
            log.add(
                    DefectCode.EXTENSION_COUNT_DIFFERS,
                    0,
                    EXTENSION_COUNT_OFFSET,
                    declared + " extensions declared, " + (blocks - 1) + " present");
        }
        List<CtaExtension> extensions = new ArrayList<>();
        for (int index = 1; index < blocks; index++) {
            Block block = new Block(edid, index);
            boolean isCounted = index <= declared;
            boolean isPadding = !isCounted && block.isUniform(0, BLOCK_BYTES);
            if (isPadding || (!checkSum(block, log) && !isCounted)) {
                continue;
            }
            int tag = block.at(0);
            if (tag == CtaExtension.TAG) {
                extensions.add(CtaExtension.read(block, log));
            } else if (tag != TAG_BLOCK_MAP) {
                log.add(DefectCode.EXTENSION_NOT_READ, block, 0, String.format("extension %02Xh is not read", tag));
            }
        }
        return extensions;
    }

    private static <T> @Nullable T first(Stream<@Nullable T> values) {
        return values.filter(Objects::nonNull).findFirst().orElse(null);
    }

    private static VideoInput input(
            BaseBlock base,
            @Nullable HdmiBlock hdmi,
            @Nullable HdmiForumBlock forum,
            @Nullable CtaFlags flags,
            DefectLog log) {
        if (hdmi != null && base.analog() != null) {
            log.add(
                    DefectCode.LINK_CONTRADICTORY,
                    0,
                    0x14,
                    "an analog input according to the base block, but with an HDMI data block; taken for HDMI");
        }
        VideoLink link = hdmi != null ? VideoLink.HDMI : base.digital() != null ? VideoLink.DVI : VideoLink.ANALOG;
        return new VideoInput(
                link,
                base.analog(),
                base.digital(),
                link == VideoLink.ANALOG ? null : maxTmdsClock(hdmi, forum),
                hdmi,
                forum,
                flags);
    }

    private static Frequency maxTmdsClock(@Nullable HdmiBlock hdmi, @Nullable HdmiForumBlock forum) {
        Frequency greatest = PLAIN_TMDS_CLOCK;
        if (hdmi != null) {
            greatest = greater(greatest, hdmi.declaredMaxTmdsClock());
        }
        if (forum != null) {
            greatest = greater(greatest, forum.declaredMaxTmdsCharacterRate());
        }
        return greatest;
    }

    private static Frequency greater(Frequency one, @Nullable Frequency other) {
        return other != null && other.compareTo(one) > 0 ? other : one;
    }
}
