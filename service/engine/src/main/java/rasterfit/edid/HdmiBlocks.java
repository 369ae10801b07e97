package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.HdmiBlock.Latency;
import rasterfit.quantity.Frequency;
import rasterfit.timing.HdmiVideo;

/**
 * Reads the vendor data blocks of HDMI. Byte numbers in comments count from the header byte of the block as 0, as HDMI 1.3a
 * table 8-6 does; bytes past the length of a block are absent, not zero.
 */
final class HdmiBlocks {
    static final int HDMI = 0x000C03;
    static final int HDMI_FORUM = 0xC45DD8;

    private static final Frequency CLOCK_UNIT = Frequency.ofHz(5_000_000);
    private static final int LEAST_HDMI_LENGTH = 5;
    private static final int LEAST_FORUM_LENGTH = 7;

    private HdmiBlocks() {}

    static @Nullable HdmiBlock readHdmi(Block block, int payload, int length, DefectLog log) {
        if (length < LEAST_HDMI_LENGTH) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block,
                    payload - 1,
                    length + " bytes, but an HDMI data block has at least " + LEAST_HDMI_LENGTH);
            return null;
        }
        int flags = at(block, payload, length, 6);
        int clock = at(block, payload, length, 7);
        int present = at(block, payload, length, 8);
        boolean hasLatency = (present & 0x80) != 0;
        boolean hasInterlacedLatency = hasLatency && (present & 0x40) != 0;
        boolean hasVideo = (present & 0x20) != 0;
        int next = 9;
        Latency latency = hasLatency ? latency(block, payload, length, next) : null;
        next += hasLatency ? 2 : 0;
        Latency interlaced = hasInterlacedLatency ? latency(block, payload, length, next) : null;
        next += hasInterlacedLatency ? 2 : 0;
        return new HdmiBlock(
                clock == 0 ? null : CLOCK_UNIT.times(clock),
                deepColourBits(flags),
                (flags & 0x08) != 0,
                (flags & 0x01) != 0,
                latency,
                interlaced,
                hasVideo ? hdmiVics(block, payload, length, next, log) : List.of());
    }

    static @Nullable HdmiForumBlock readForum(Block block, int payload, int length, DefectLog log) {
        if (length < LEAST_FORUM_LENGTH) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block,
                    payload - 1,
                    length + " bytes, but an HDMI Forum data block has at least " + LEAST_FORUM_LENGTH);
            return null;
        }
        int rate = at(block, payload, length, 5);
        return new HdmiForumBlock(at(block, payload, length, 4), rate == 0 ? null : CLOCK_UNIT.times(rate));
    }

    /** Byte {@code number} of the block, 0 past its end. */
    private static int at(Block block, int payload, int length, int number) {
        return number <= length ? block.at(payload + number - 1) : 0;
    }

    private static List<Integer> deepColourBits(int flags) {
        List<Integer> bits = new ArrayList<>();
        if ((flags & 0x10) != 0) {
            bits.add(30);
        }
        if ((flags & 0x20) != 0) {
            bits.add(36);
        }
        if ((flags & 0x40) != 0) {
            bits.add(48);
        }
        return bits;
    }

    private static Latency latency(Block block, int payload, int length, int number) {
        return new Latency(
                latencyMs(at(block, payload, length, number)), latencyMs(at(block, payload, length, number + 1)));
    }

    /** Milliseconds are 2·(code − 1), at most 500; 0 is unknown, 255 not supported, the rest reserved. */
    private static @Nullable Integer latencyMs(int code) {
        return code >= 1 && code <= 251 ? 2 * (code - 1) : null;
    }

    /** A byte of 3D flags, a byte with the lengths of two lists, then the HDMI VICs. */
    private static List<Integer> hdmiVics(Block block, int payload, int length, int number, DefectLog log) {
        int count = at(block, payload, length, number + 1) >> 5;
        int first = number + 2;
        List<Integer> hdmiVics = new ArrayList<>();
        if (first + count - 1 > length) {
            log.add(
                    DefectCode.DATA_BLOCK_TOO_SHORT,
                    block,
                    payload - 1,
                    count + " HDMI VICs do not fit in " + length + " bytes");
            return hdmiVics;
        }
        for (int i = first; i < first + count; i++) {
            int hdmiVic = at(block, payload, length, i);
            if (hdmiVic == 0) {
                log.add(DefectCode.VIC_RESERVED, block, payload + i - 1, "0 is a reserved HDMI VIC");
                continue;
            }
            if (HdmiVideo.find(hdmiVic).isEmpty()) {
                log.add(
                        DefectCode.VIC_UNKNOWN,
                        block,
                        payload + i - 1,
                        "HDMI VIC " + hdmiVic + " has no published timing");
            }
            hdmiVics.add(hdmiVic);
        }
        return hdmiVics;
    }
}
