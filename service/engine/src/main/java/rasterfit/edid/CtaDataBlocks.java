package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rasterfit.timing.Cta861;

/**
 * The data block collection of a CTA-861 extension (CTA-861-I §7.4, tables 61 to 64): video, HDMI and HDMI Forum blocks. A
 * reader of a further block is one more case in {@link #read}.
 */
record CtaDataBlocks(
        List<ShortVideo> videos,
        @Nullable HdmiBlock hdmi,
        @Nullable HdmiForumBlock hdmiForum) {
    static final CtaDataBlocks NONE = new CtaDataBlocks(List.of(), null, null);

    /** One short video descriptor. */
    record ShortVideo(int vic, boolean isNative) {}

    private static final int TAG_VIDEO = 2;
    private static final int TAG_VENDOR = 3;
    private static final int TAG_VESA_TRANSFER = 5;
    private static final int TAG_VIDEO_FORMAT = 6;
    private static final int TAG_EXTENDED = 7;

    /** Extended tags whose blocks concern timings (table 64); the others say nothing about which timings are taken. */
    private static final Map<Integer, String> EXTENDED_WITH_TIMINGS = Map.of(
            8, "native video resolution",
            14, "4:2:0 video",
            15, "4:2:0 capability map",
            34, "DisplayID type VII timing",
            35, "DisplayID type VIII timing",
            42, "DisplayID type X timing");

    static CtaDataBlocks read(Block block, int from, int end, DefectLog log) {
        List<ShortVideo> videos = new ArrayList<>();
        HdmiBlock hdmi = null;
        HdmiForumBlock hdmiForum = null;
        int offset = from;
        while (offset < end) {
            int tag = block.at(offset) >> 5;
            int length = block.at(offset) & 31;
            int payload = offset + 1;
            if (payload + length > end) {
                log.add(
                        DefectCode.DATA_BLOCK_OVERRUN,
                        block,
                        offset,
                        length + " bytes do not fit in front of the detailed timings; the rest is left out");
                break;
            }
            switch (tag) {
                case TAG_VIDEO -> videos.addAll(videos(block, payload, length, log));
                case TAG_VENDOR -> {
                    int identifier = identifier(block, offset, length, log);
                    if (identifier == HdmiBlocks.HDMI && hdmi == null) {
                        hdmi = HdmiBlocks.readHdmi(block, payload, length, log);
                    } else if (identifier == HdmiBlocks.HDMI_FORUM && hdmiForum == null) {
                        hdmiForum = HdmiBlocks.readForum(block, payload, length, log);
                    }
                }
                case TAG_VESA_TRANSFER, TAG_VIDEO_FORMAT ->
                    log.add(DefectCode.DATA_BLOCK_NOT_READ, block, offset, "data block " + tag + " is not read");
                case TAG_EXTENDED -> noteExtended(block, offset, length, log);
                default -> {
                    // Audio, speakers and reserved tags say nothing about which timings are taken.
                }
            }
            offset = payload + length;
        }
        return new CtaDataBlocks(List.copyOf(videos), hdmi, hdmiForum);
    }

    /** CTA-861-I §7.5.1. */
    private static List<ShortVideo> videos(Block block, int payload, int length, DefectLog log) {
        List<ShortVideo> videos = new ArrayList<>();
        for (int offset = payload; offset < payload + length; offset++) {
            int code = block.at(offset);
            if (code == 0 || code == 128 || code == 254 || code == 255) {
                log.add(DefectCode.VIC_RESERVED, block, offset, code + " is a reserved short video descriptor");
                continue;
            }
            boolean isNative = code >= 129 && code <= 192;
            int vic = isNative ? code - 128 : code;
            if (Cta861.find(vic).isEmpty()) {
                log.add(DefectCode.VIC_UNKNOWN, block, offset, "VIC " + vic + " has no published timing");
            }
            videos.add(new ShortVideo(vic, isNative));
        }
        return videos;
    }

    /** The first three bytes of a vendor's block, least significant first; 0 stands for nobody. */
    private static int identifier(Block block, int offset, int length, DefectLog log) {
        if (length < 3) {
            log.add(DefectCode.DATA_BLOCK_TOO_SHORT, block, offset, length + " bytes hold no vendor identifier");
            return 0;
        }
        return block.at(offset + 1) | block.at(offset + 2) << 8 | block.at(offset + 3) << 16;
    }

    private static void noteExtended(Block block, int offset, int length, DefectLog log) {
        if (length == 0) {
            log.add(DefectCode.DATA_BLOCK_TOO_SHORT, block, offset, "an extended data block without its tag");
            return;
        }
        int extendedTag = block.at(offset + 1);
        String name = EXTENDED_WITH_TIMINGS.get(extendedTag);
        if (name != null) {
            log.add(
                    DefectCode.DATA_BLOCK_NOT_READ,
                    block,
                    offset,
                    "the " + name + " data block (extended tag " + extendedTag + ") is not read");
        }
    }
}
