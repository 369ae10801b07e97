package rasterfit.edid;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;

/** Reads EDID 1.0 to 1.4 (VESA E-EDID release A2) with its extensions of CTA-861, DisplayID and further timings. */
public final class EdidReader {
    public static final int BLOCK_BYTES = Block.BYTES;
    public static final int MOST_BLOCKS = 256;

    /** What a digital link carries at least without further declaration (HDMI 1.3a §8.3). */
    public static final Frequency PLAIN_TMDS_CLOCK = Frequency.ofHz(165_000_000);

    private static final int[] HEADER = {0x00, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x00};

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
        first.checkSum(log);
        BaseBlock base = BaseBlock.read(first, log);
        Extensions extensions = Extensions.read(edid, blocks, base, log);
        VideoInput input = input(base, extensions, log);
        return new EdidReading(
                true,
                base.product(),
                input,
                ListedTimings.of(base, extensions, input.hdmi()),
                rangeLimits(base, extensions),
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

    /** Those of the base block; else those of DisplayID where they hold line rates as well. */
    private static @Nullable RangeLimits rangeLimits(BaseBlock base, Extensions extensions) {
        RangeLimits ofBase = base.descriptors().rangeLimits();
        return ofBase != null
                ? ofBase
                : extensions.displayId().stream()
                        .map(DisplayIdSection::rangeLimits)
                        .filter(Objects::nonNull)
                        .flatMap(limits -> limits.asOfDescriptor().stream())
                        .findFirst()
                        .orElse(null);
    }

    private static VideoInput input(BaseBlock base, Extensions extensions, DefectLog log) {
        HdmiBlock hdmi = extensions.first(CtaDataBlocks::hdmi);
        HdmiForumBlock forum = extensions.first(CtaDataBlocks::hdmiForum);
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
                extensions.flags(),
                extensions.first(CtaDataBlocks::capability));
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
