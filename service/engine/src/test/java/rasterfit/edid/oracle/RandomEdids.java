package rasterfit.edid.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import rasterfit.edid.EdidBuilder;

/** EDIDs made by the project's own builder from the standard; the same ones for the same seed. */
final class RandomEdids {
    private static final int BLOCK = 128;
    private static final int MOST_EXTENSIONS = 255;
    private static final int BLOCK_MAP = 0xF0;
    private static final int FURTHER_TIMINGS = 0x10;

    private final Random random;
    private final RandomTimings timings;
    private final RandomDisplayId displayId;
    private final RandomDataBlocks dataBlocks;

    RandomEdids(long seed) {
        random = new Random(seed);
        timings = new RandomTimings(random);
        displayId = new RandomDisplayId(random);
        dataBlocks = new RandomDataBlocks(random, timings, displayId);
    }

    List<byte[]> next(int count) {
        List<byte[]> edids = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            edids.add(next());
        }
        return edids;
    }

    private byte[] next() {
        int revision = random.nextInt(3) == 0 ? random.nextInt(4) : random.nextBoolean() ? 4 : 3;
        EdidBuilder edid = random.nextBoolean() ? EdidBuilder.digital(revision) : EdidBuilder.analog(revision);
        RandomDescriptors descriptors = new RandomDescriptors(random);
        base(edid, revision, descriptors);
        int extensions = extensions();
        for (int i = 0; i < extensions; i++) {
            switch (random.nextInt(16)) {
                case 0 -> edid.extension(blockOf(BLOCK_MAP));
                // Neither decoder reads these.
                case 1 -> edid.extension(blockOf(0x41));
                case 2 -> edid.extension(furtherTimings(descriptors));
                case 3 -> edid.extension(displayId.section());
                default -> edid.extension(dataBlocks.extension());
            }
        }
        byte[] bytes = edid.build();
        if (random.nextInt(10) == 0) {
            int block = random.nextInt(bytes.length / BLOCK);
            bytes[block * BLOCK + BLOCK - 1] ^= (byte) (1 + random.nextInt(255));
        }
        return bytes;
    }

    /** Mostly none to three; now and then many, up to as many as the count can say. */
    private int extensions() {
        return switch (random.nextInt(60)) {
            case 0 -> 4 + random.nextInt(60);
            case 1 -> random.nextInt(4) == 0 ? MOST_EXTENSIONS : 4;
            default -> random.nextInt(4);
        };
    }

    private void base(EdidBuilder edid, int revision, RandomDescriptors descriptors) {
        String letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        StringBuilder maker = new StringBuilder();
        for (int i = 0; i < 3; i++) {
            maker.append(letters.charAt(random.nextInt(letters.length())));
        }
        edid.product(maker.toString(), random.nextInt(0x10000));
        edid.made(random.nextInt(8) == 0 ? 255 : random.nextInt(55), 1990 + random.nextInt(36));
        edid.features(random.nextInt(4) == 0 ? random.nextInt(256) : 0x02 | random.nextInt(2));
        edid.established(random.nextInt(256), random.nextInt(256), random.nextInt(256));
        int standard = random.nextInt(9);
        for (int slot = 0; slot < standard; slot++) {
            int code = descriptors.standardTiming();
            edid.patch(0x26 + 2 * slot, code >> 8, code & 0xFF);
        }
        int detailed = random.nextInt(5);
        for (int i = 0; i < 4; i++) {
            if (i < detailed) {
                edid.descriptor(i == 0 ? timings.possible() : timings.detailed());
            } else {
                descriptors.addTo(edid, revision);
            }
        }
    }

    /** VESA Video Timing Block 1.0 (layout from memory): how many timings of each kind, then these. */
    private byte[] furtherTimings(RandomDescriptors descriptors) {
        byte[] block = blockOf(FURTHER_TIMINGS);
        int detailed = random.nextInt(5);
        int codes = random.nextInt(5);
        int standard = random.nextInt(10);
        block[1] = 1;
        block[2] = (byte) detailed;
        block[3] = (byte) codes;
        block[4] = (byte) standard;
        int at = 5;
        for (int i = 0; i < detailed; i++) {
            System.arraycopy(timings.possible(), 0, block, at, 18);
            at += 18;
        }
        for (int i = 0; i < codes; i++) {
            for (int value : descriptors.cvtCode()) {
                block[at++] = (byte) value;
            }
        }
        for (int i = 0; i < standard; i++) {
            int code = descriptors.standardTiming();
            block[at++] = (byte) (code >> 8);
            block[at++] = (byte) code;
        }
        return block;
    }

    private static byte[] blockOf(int tag) {
        byte[] block = new byte[BLOCK];
        block[0] = (byte) tag;
        return block;
    }
}
