package rasterfit.edid;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;
import rasterfit.timing.RasterTiming;

/** Writes the extension block of CTA-861-I §7.3 (table 60: layout; tables 62 and 64: data block tags). */
public final class CtaBuilder {
    private final ByteArrayOutputStream dataBlocks = new ByteArrayOutputStream();
    private final List<byte[]> detailed = new ArrayList<>();
    private int revision = 3;
    private int flags;

    /** Revision 1 has no flags and no data blocks, revision 2 has flags, revision 3 both. */
    public CtaBuilder revision(int revision) {
        this.revision = revision;
        return this;
    }

    /** Table 60, byte 3: 80h underscan, 40h basic audio, 20h YCbCr 4:4:4, 10h YCbCr 4:2:2, low bits: native DTDs. */
    public CtaBuilder flags(int flags) {
        this.flags = flags;
        return this;
    }

    /** §7.5.1: one short video descriptor per VIC. Call {@link #videoBytes} for native ones. */
    public CtaBuilder video(int... vics) {
        return videoBytes(vics);
    }

    /** §7.5.1: short video descriptors as they stand, 81h being VIC 1 as a native format. */
    public CtaBuilder videoBytes(int... descriptors) {
        return dataBlock(2, descriptors);
    }

    /** HDMI 1.3a table 8-6: identifier 00-0C-03, address 1.0.0.0, no deep colour, the greatest TMDS clock in 5 MHz. */
    public CtaBuilder hdmi(int maxTmdsClockMHz) {
        return dataBlock(3, 0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, maxTmdsClockMHz / 5);
    }

    /** HDMI 1.4 table 8-16, from memory: as {@link #hdmi}, then byte 8 bit 5 and the list of HDMI VICs. */
    public CtaBuilder hdmiWithVics(int maxTmdsClockMHz, int... hdmiVics) {
        int[] head = {0x03, 0x0C, 0x00, 0x10, 0x00, 0x00, maxTmdsClockMHz / 5, 0x20, 0x00, hdmiVics.length << 5};
        int[] payload = new int[head.length + hdmiVics.length];
        System.arraycopy(head, 0, payload, 0, head.length);
        System.arraycopy(hdmiVics, 0, payload, head.length, hdmiVics.length);
        return dataBlock(3, payload);
    }

    /** Identifier C4-5D-D8: version 1, greatest TMDS character rate in 5 MHz, no further flags. */
    public CtaBuilder hdmiForum(int maxTmdsCharacterRateMHz) {
        return dataBlock(3, 0xD8, 0x5D, 0xC4, 1, maxTmdsCharacterRateMHz / 5, 0, 0);
    }

    /** Table 61: tag in bits 7–5, length in bits 4–0. */
    public CtaBuilder dataBlock(int tag, int... payload) {
        if (payload.length > 31) {
            throw new IllegalArgumentException("a data block holds 31 bytes");
        }
        dataBlocks.write(tag << 5 | payload.length);
        for (int value : payload) {
            dataBlocks.write(value);
        }
        return this;
    }

    public CtaBuilder detailed(RasterTiming timing, int widthMm, int heightMm) {
        return descriptor(EdidBuilder.detailedDescriptor(timing, widthMm, heightMm));
    }

    public CtaBuilder descriptor(byte[] eighteenBytes) {
        detailed.add(eighteenBytes.clone());
        return this;
    }

    /** The 128 bytes; the checksum is left to {@link EdidBuilder}. */
    public byte[] build() {
        byte[] block = new byte[128];
        byte[] data = dataBlocks.toByteArray();
        int start = 4 + data.length;
        if (start + 18 * detailed.size() > 127) {
            throw new IllegalStateException("an extension holds 123 bytes of data blocks and detailed timings");
        }
        block[0] = 0x02;
        block[1] = (byte) revision;
        block[2] = (byte) (data.length == 0 && detailed.isEmpty() ? 0 : start);
        block[3] = (byte) flags;
        System.arraycopy(data, 0, block, 4, data.length);
        for (int i = 0; i < detailed.size(); i++) {
            System.arraycopy(detailed.get(i), 0, block, start + 18 * i, 18);
        }
        return block;
    }
}
