package rasterfit.edid;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;

/**
 * Writes EDIDs for tests and invented displays, straight from the tables of VESA E-EDID release A2 (EDID 1.4; 1.3 where
 * stated). It shares no code with the reader, so that each checks the other. {@link CtaBuilder} adds the extension of
 * CTA-861-I. Every block gets its checksum; {@link #patch} changes single bytes before that.
 */
public final class EdidBuilder {
    private static final int BLOCK_BYTES = 128;
    private static final int DESCRIPTORS = 4;

    private final byte[] base = new byte[BLOCK_BYTES];
    private final List<byte[]> descriptors = new ArrayList<>();
    private final List<byte[]> extensions = new ArrayList<>();
    private final List<int[]> patches = new ArrayList<>();
    private int standardTimings;

    private EdidBuilder(int revision) {
        // E-EDID table 3.3: fixed header; table 3.8: version 1, revision.
        put(0x00, 0x00, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x00);
        put(0x12, 1, revision);
        product("RFT", 1);
        made(1, 2024);
        // E-EDID table 3.14 bit 1: the first detailed timing is the preferred one. Table 3.13: gamma 2.2.
        put(0x17, 120, 0x02);
        // E-EDID table 3.19: unused standard timings read 01 01.
        for (int slot = 0; slot < 8; slot++) {
            put(0x26 + 2 * slot, 1, 1);
        }
    }

    /** A digital display of EDID 1.{@code revision}; interface and depth undefined (E-EDID table 3.11, byte 14h). */
    public static EdidBuilder digital(int revision) {
        EdidBuilder builder = new EdidBuilder(revision);
        builder.put(0x14, 0x80);
        return builder;
    }

    /** An analog display: 0.700 V video and 0.300 V sync, separate syncs only (E-EDID table 3.11, byte 14h = 08h). */
    public static EdidBuilder analog(int revision) {
        EdidBuilder builder = new EdidBuilder(revision);
        builder.put(0x14, 0x08);
        return builder;
    }

    /** E-EDID table 3.11: the whole video input definition byte. */
    public EdidBuilder videoInput(int value) {
        put(0x14, value);
        return this;
    }

    /** E-EDID table 3.11, byte 14h bits 3–0 of EDID 1.4: 1 DVI, 2 HDMI-a, 3 HDMI-b, 4 MDDI, 5 DisplayPort. */
    public EdidBuilder digitalInterface(int kind) {
        put(0x14, (base[0x14] & 0xF0) | kind);
        return this;
    }

    /** E-EDID table 3.14: the whole feature support byte. */
    public EdidBuilder features(int value) {
        put(0x18, value);
        return this;
    }

    /** E-EDID table 3.14 bit 0: continuous frequency (1.4), default GTF (up to 1.3). */
    public EdidBuilder continuousFrequency() {
        put(0x18, base[0x18] | 0x01);
        return this;
    }

    /** E-EDID table 3.4: three letters of five bits, big-endian; product code little-endian. */
    public EdidBuilder product(String manufacturer, int code) {
        int letters = 0;
        for (int i = 0; i < manufacturer.length(); i++) {
            letters = letters << 5 | (manufacturer.charAt(i) - 'A' + 1);
        }
        put(0x08, letters >> 8, letters, code, code >> 8);
        return this;
    }

    /** E-EDID table 3.7: week 0 = not stated, 255 = the year is the model year. */
    public EdidBuilder made(int week, int year) {
        put(0x10, week, year - 1990);
        return this;
    }

    /** E-EDID table 3.12. */
    public EdidBuilder sizeCm(int width, int height) {
        put(0x15, width, height);
        return this;
    }

    /** E-EDID table 3.18: three bytes of flags. */
    public EdidBuilder established(int first, int second, int third) {
        put(0x23, first, second, third);
        return this;
    }

    /** E-EDID table 3.19: aspect 0 = 16:10 (1:1 before 1.3), 1 = 4:3, 2 = 5:4, 3 = 16:9. */
    public EdidBuilder standard(int horizontalActive, int aspect, int fieldRateHz) {
        put(0x26 + 2 * standardTimings++, horizontalActive / 8 - 31, aspect << 6 | (fieldRateHz - 60));
        return this;
    }

    public EdidBuilder detailed(RasterTiming timing, int widthMm, int heightMm) {
        return descriptor(detailedDescriptor(timing, widthMm, heightMm));
    }

    /** E-EDID table 3.26 without offsets, byte 10 = 01h: range limits only (EDID 1.4) or 00h (before). */
    public EdidBuilder rangeLimits(int minFieldHz, int maxFieldHz, int minLineKHz, int maxLineKHz, int maxClockMHz) {
        int support = base[0x13] >= 4 ? 0x01 : 0x00;
        return displayDescriptor(
                0xFD,
                0,
                minFieldHz,
                maxFieldHz,
                minLineKHz,
                maxLineKHz,
                maxClockMHz / 10,
                support,
                0x0A,
                0x20,
                0x20,
                0x20,
                0x20,
                0x20,
                0x20);
    }

    /** E-EDID §3.10.3.4: up to 13 characters, ended by 0Ah, padded by 20h. */
    public EdidBuilder name(String name) {
        int[] content = new int[14];
        byte[] text = (name.length() < 13 ? name + "\n" : name).getBytes(StandardCharsets.US_ASCII);
        for (int i = 0; i < 13; i++) {
            content[i + 1] = i < text.length ? text[i] : 0x20;
        }
        return displayDescriptor(0xFC, content);
    }

    /** E-EDID table 3.23: 00 00 00, tag, then byte 4 and the 13 bytes of content. */
    public EdidBuilder displayDescriptor(int tag, int... byte4AndContent) {
        byte[] descriptor = new byte[18];
        descriptor[3] = (byte) tag;
        for (int i = 0; i < byte4AndContent.length; i++) {
            descriptor[4 + i] = (byte) byte4AndContent[i];
        }
        return descriptor(descriptor);
    }

    public EdidBuilder descriptor(byte[] eighteenBytes) {
        if (descriptors.size() == DESCRIPTORS) {
            throw new IllegalStateException("a base block holds four descriptors");
        }
        descriptors.add(eighteenBytes.clone());
        return this;
    }

    public EdidBuilder extension(CtaBuilder cta) {
        return extension(cta.build());
    }

    /** Any block of 128 bytes; its last byte is replaced by the checksum. */
    public EdidBuilder extension(byte[] block) {
        extensions.add(block.clone());
        return this;
    }

    /** Overwrites bytes of the finished EDID before the checksums are made. */
    public EdidBuilder patch(int offset, int... values) {
        for (int i = 0; i < values.length; i++) {
            patches.add(new int[] {offset + i, values[i]});
        }
        return this;
    }

    public byte[] build() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] first = base.clone();
        for (int slot = 0; slot < DESCRIPTORS; slot++) {
            byte[] descriptor = slot < descriptors.size() ? descriptors.get(slot) : dummyDescriptor();
            System.arraycopy(descriptor, 0, first, 0x36 + 18 * slot, 18);
        }
        first[0x7E] = (byte) extensions.size();
        out.writeBytes(first);
        extensions.forEach(out::writeBytes);
        byte[] edid = out.toByteArray();
        for (int[] patch : patches) {
            edid[patch[0]] = (byte) patch[1];
        }
        return withChecksums(edid);
    }

    /** E-EDID §3.11: the 128 bytes of every block add up to 0 modulo 256. */
    public static byte[] withChecksums(byte[] edid) {
        byte[] sealed = edid.clone();
        for (int start = 0; start + BLOCK_BYTES <= sealed.length; start += BLOCK_BYTES) {
            int sum = 0;
            for (int i = 0; i < BLOCK_BYTES - 1; i++) {
                sum += sealed[start + i];
            }
            sealed[start + BLOCK_BYTES - 1] = (byte) -sum;
        }
        return sealed;
    }

    /** E-EDID tables 3.21 and 3.22; the vertical counts of an interlaced timing are those of one field (§3.12). */
    public static byte[] detailedDescriptor(RasterTiming timing, int widthMm, int heightMm) {
        int fields = timing.scan().fieldsPerFrame();
        int clock = Math.toIntExact(
                timing.pixelClock().ratioTo(Frequency.ofHz(10_000)).round());
        int hBlank = timing.horizontalFrontPorch() + timing.horizontalSync() + timing.horizontalBackPorch();
        int vActive = timing.verticalActive() / fields;
        int vBlank = timing.verticalFrontPorch() + timing.verticalSync() + timing.verticalBackPorch();
        int flags = 0x18; // digital separate sync
        flags |= fields == 2 ? 0x80 : 0;
        flags |= timing.verticalPolarity() == Polarity.POSITIVE ? 0x04 : 0;
        flags |= timing.horizontalPolarity() == Polarity.POSITIVE ? 0x02 : 0;
        int[] bytes = {
            clock,
            clock >> 8,
            timing.horizontalActive(),
            hBlank,
            (timing.horizontalActive() >> 8) << 4 | hBlank >> 8,
            vActive,
            vBlank,
            (vActive >> 8) << 4 | vBlank >> 8,
            timing.horizontalFrontPorch(),
            timing.horizontalSync(),
            (timing.verticalFrontPorch() & 15) << 4 | (timing.verticalSync() & 15),
            (timing.horizontalFrontPorch() >> 8) << 6
                    | (timing.horizontalSync() >> 8) << 4
                    | (timing.verticalFrontPorch() >> 4) << 2
                    | timing.verticalSync() >> 4,
            widthMm,
            heightMm,
            (widthMm >> 8) << 4 | heightMm >> 8,
            0,
            0,
            flags
        };
        byte[] descriptor = new byte[18];
        for (int i = 0; i < 18; i++) {
            descriptor[i] = (byte) bytes[i];
        }
        return descriptor;
    }

    /** E-EDID §3.10.3.11: tag 10h fills an unused descriptor. */
    private static byte[] dummyDescriptor() {
        byte[] descriptor = new byte[18];
        descriptor[3] = 0x10;
        return descriptor;
    }

    private void put(int offset, int... values) {
        for (int i = 0; i < values.length; i++) {
            base[offset + i] = (byte) values[i];
        }
    }
}
