package rasterfit.edid;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.CtaDataBlocks.ShortVideo;
import rasterfit.timing.Cta861;

/**
 * Reads a data block collection (CTA-861-I §7.4, tables 61 to 64). A reader of a further block is one more case in {@link
 * #readBlock} or {@link #readExtended}. Where a block may stand once, the first counts.
 */
final class CtaDataBlocksReader {
    private static final int TAG_VIDEO = 2;
    private static final int TAG_VENDOR = 3;
    private static final int TAG_VESA_TRANSFER = 5;
    private static final int TAG_VIDEO_FORMAT = 6;
    private static final int TAG_EXTENDED = 7;

    private static final int EXTENDED_VIDEO_CAPABILITY = 0;
    private static final int EXTENDED_VIDEO_420 = 14;
    private static final int EXTENDED_MAP_420 = 15;
    /** From memory, as {@code edid-decode} reads them: HDMI 2.1, extension override and sink capabilities. */
    private static final int EXTENDED_EXTENSION_COUNT = 120;

    private static final int EXTENDED_SINK_CAPABILITY = 121;

    /** Extended tags whose blocks concern timings (table 64) and are not read; the others say nothing about them. */
    private static final Map<Integer, String> NOT_READ = Map.of(
            8, "native video resolution",
            13, "video format preference");

    private final Block block;
    private final DefectLog log;
    private final List<ShortVideo> videos = new ArrayList<>();
    private final List<ShortVideo> only420 = new ArrayList<>();
    private final Set<Integer> also420 = new HashSet<>();
    private boolean allAlso420;
    private @Nullable VideoCapability capability;
    private @Nullable HdmiBlock hdmi;
    private @Nullable HdmiForumBlock hdmiForum;
    private final List<DisplayIdTiming> displayIdTimings = new ArrayList<>();
    private @Nullable Integer extensionCount;

    private CtaDataBlocksReader(Block block, DefectLog log) {
        this.block = block;
        this.log = log;
    }

    /** The blocks from one offset up to, not including, another. */
    static CtaDataBlocks read(Block block, int from, int end, DefectLog log) {
        CtaDataBlocksReader reader = new CtaDataBlocksReader(block, log);
        int offset = from;
        while (offset < end) {
            int length = block.at(offset) & 31;
            if (offset + 1 + length > end) {
                log.add(
                        DefectCode.DATA_BLOCK_OVERRUN,
                        block,
                        offset,
                        length + " bytes do not fit in front of the detailed timings; the rest is left out");
                break;
            }
            reader.readBlock(offset, length);
            offset += 1 + length;
        }
        return new CtaDataBlocks(
                reader.videos,
                reader.only420,
                reader.also420,
                reader.allAlso420,
                reader.capability,
                reader.hdmi,
                reader.hdmiForum,
                reader.displayIdTimings,
                reader.extensionCount);
    }

    private void readBlock(int offset, int length) {
        int tag = block.at(offset) >> 5;
        switch (tag) {
            case TAG_VIDEO -> videos.addAll(videos(offset + 1, length));
            case TAG_VENDOR -> readVendor(offset, length);
            case TAG_VESA_TRANSFER, TAG_VIDEO_FORMAT ->
                log.add(DefectCode.DATA_BLOCK_NOT_READ, block, offset, "data block " + tag + " is not read");
            case TAG_EXTENDED -> readExtended(offset, length);
            default -> {
                // Audio, speakers and reserved tags say nothing about which timings are taken.
            }
        }
    }

    /** The first three bytes are the vendor's identifier, least significant first. */
    private void readVendor(int offset, int length) {
        if (!isLongEnough(offset, length, 3, "no vendor identifier")) {
            return;
        }
        int identifier = block.at(offset + 1) | block.at(offset + 2) << 8 | block.at(offset + 3) << 16;
        if (identifier == HdmiBlocks.HDMI && hdmi == null) {
            hdmi = HdmiBlocks.readHdmi(block, offset + 1, length, log);
        } else if (identifier == HdmiBlocks.HDMI_FORUM && hdmiForum == null) {
            hdmiForum = HdmiBlocks.readForum(block, offset + 1, length, log);
        }
    }

    private void readExtended(int offset, int length) {
        if (!isLongEnough(offset, length, 1, "no extended tag")) {
            return;
        }
        int tag = block.at(offset + 1);
        int content = offset + 2;
        switch (tag) {
            case EXTENDED_VIDEO_CAPABILITY -> {
                if (isLongEnough(offset, length, 2, "no video capability") && capability == null) {
                    capability = VideoCapability.of(block.at(content));
                }
            }
            case EXTENDED_VIDEO_420 -> only420.addAll(videos(content, length - 1));
            case EXTENDED_MAP_420 -> readMap420(content, length - 1);
            case DisplayIdBlock.TYPE_VII, DisplayIdBlock.TYPE_VIII, DisplayIdBlock.TYPE_X ->
                displayIdTimings.addAll(DisplayIdTimings.ofCta(block, tag, content, length - 1, log));
            case EXTENDED_EXTENSION_COUNT -> {
                if (isLongEnough(offset, length, 2, "no number of extensions") && extensionCount == null) {
                    extensionCount = block.at(content);
                }
            }
            case EXTENDED_SINK_CAPABILITY -> {
                // As in the vendor's block; two reserved bytes and the tag take the place of the identifier.
                if (hdmiForum == null) {
                    hdmiForum = HdmiBlocks.readForum(block, offset + 1, length, log);
                }
            }
            default -> {
                String name = NOT_READ.get(tag);
                if (name != null) {
                    log.add(
                            DefectCode.DATA_BLOCK_NOT_READ,
                            block,
                            offset,
                            "the " + name + " data block (extended tag " + tag + ") is not read");
                }
            }
        }
    }

    /** CTA-861-I §7.5.11: bit 0 of the first byte stands for the first short video descriptor. */
    private void readMap420(int content, int bytes) {
        allAlso420 |= bytes == 0;
        for (int i = 0; i < 8 * bytes; i++) {
            if (block.bit(content + i / 8, i % 8)) {
                also420.add(i);
            }
        }
    }

    /** CTA-861-I §7.5.1. */
    private List<ShortVideo> videos(int content, int bytes) {
        List<ShortVideo> read = new ArrayList<>();
        for (int offset = content; offset < content + bytes; offset++) {
            int code = block.at(offset);
            if (code == 0 || code == 128 || code == 254 || code == 255) {
                log.add(DefectCode.VIC_RESERVED, block, offset, code + " is a reserved short video descriptor");
                read.add(ShortVideo.RESERVED);
                continue;
            }
            boolean isNative = code >= 129 && code <= 192;
            int vic = isNative ? code - 128 : code;
            if (Cta861.find(vic).isEmpty()) {
                log.add(DefectCode.VIC_UNKNOWN, block, offset, "VIC " + vic + " has no published timing");
            }
            read.add(new ShortVideo(vic, isNative));
        }
        return read;
    }

    private boolean isLongEnough(int offset, int length, int least, String otherwise) {
        if (length < least) {
            log.add(DefectCode.DATA_BLOCK_TOO_SHORT, block, offset, length + " bytes hold " + otherwise);
        }
        return length >= least;
    }
}
