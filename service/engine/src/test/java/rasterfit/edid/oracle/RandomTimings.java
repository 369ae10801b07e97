package rasterfit.edid.oracle;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import rasterfit.edid.EdidBuilder;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;
import rasterfit.timing.Polarity;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** Detailed timing descriptors (E-EDID tables 3.21 and 3.22) of every kind, by chance but for the seed. */
final class RandomTimings {
    private static final int BYTES = 18;
    private static final int HORIZONTAL_BORDER = 15;
    private static final int VERTICAL_BORDER = 16;
    private static final int FLAGS = 17;
    /** 10 MHz, in units of 10 kHz. */
    private static final int LEAST_CLOCK = 1000;
    /** The greatest numbers that fit. */
    private static final int MOST_TWELVE_BITS = 4095;

    private static final int MOST_TEN_BITS = 1023;
    private static final int MOST_SIX_BITS = 63;

    private final Random random;

    RandomTimings(Random random) {
        this.random = random;
    }

    /** Mostly possible ones; some that no raster has, some made of one value in all bytes. */
    byte[] detailed() {
        return switch (random.nextInt(20)) {
            case 0 -> impossible();
            case 1 -> filler();
            case 2 -> slow();
            case 3, 4, 5 -> published();
            default -> possible();
        };
    }

    byte[] possible() {
        int across = atMost(MOST_TWELVE_BITS - 2) + 2;
        int down = atMost(MOST_TWELVE_BITS - 2) + 2;
        int[] horizontal = blanking(MOST_TEN_BITS);
        int[] vertical = blanking(MOST_SIX_BITS);
        boolean interlaced = random.nextInt(4) == 0;
        int fields = interlaced ? 2 : 1;
        int total = fields * (down + vertical[0] + vertical[1] + vertical[2]) + (interlaced ? 1 : 0);
        RasterTiming timing = new RasterTiming(
                Frequency.ofHz(10_000L * (LEAST_CLOCK + random.nextInt(65_536 - LEAST_CLOCK))),
                across,
                horizontal[0],
                horizontal[1],
                horizontal[2],
                fields * down,
                vertical[0],
                vertical[1],
                vertical[2],
                total,
                interlaced ? Scan.INTERLACED : Scan.PROGRESSIVE,
                polarity(),
                polarity());
        byte[] descriptor = EdidBuilder.detailedDescriptor(timing, atMost(MOST_TWELVE_BITS), atMost(MOST_TWELVE_BITS));
        if (random.nextInt(4) == 0) {
            // Every kind of sync and of stereo.
            descriptor[FLAGS] = (byte) ((descriptor[FLAGS] & 0x80) | random.nextInt(0x80));
        }
        if (random.nextInt(4) == 0) {
            // Narrow enough for every reading of where borders lie.
            descriptor[HORIZONTAL_BORDER] = (byte) atMost(Math.min(255, Math.min(across - 1, horizontal[2]) / 2));
            descriptor[VERTICAL_BORDER] = (byte) atMost(Math.min(255, Math.min(down - 1, vertical[2]) / 2));
        }
        return descriptor;
    }

    /** Front porch, sync and back porch that fit into twelve bits together. */
    private int[] blanking(int most) {
        int front = atMost(most);
        int sync = 1 + atMost(most - 1);
        return new int[] {front, sync, atMost(MOST_TWELVE_BITS - front - sync)};
    }

    private byte[] published() {
        List<RasterTiming> timings = random.nextBoolean()
                ? Cta861.all().stream().map(video -> video.timing()).toList()
                : Dmt.all().stream().map(monitor -> monitor.timing()).toList();
        RasterTiming timing = timings.get(random.nextInt(timings.size()));
        boolean fits = timing.pixelClock().compareTo(Frequency.ofHz(655_350_000)) <= 0
                && timing.horizontalActive() <= MOST_TWELVE_BITS
                && timing.horizontalFrontPorch() <= MOST_TEN_BITS
                && timing.verticalActive() <= MOST_TWELVE_BITS;
        return fits ? EdidBuilder.detailedDescriptor(timing, 160, 90) : possible();
    }

    /** Below 10 MHz, down to a clock of 10 kHz. */
    private byte[] slow() {
        byte[] descriptor = possible();
        int clock = 1 + random.nextInt(LEAST_CLOCK - 1);
        descriptor[0] = (byte) clock;
        descriptor[1] = (byte) (clock >> 8);
        return descriptor;
    }

    static boolean isSlow(byte[] descriptor) {
        return ((descriptor[0] & 0xFF) | (descriptor[1] & 0xFF) << 8) < LEAST_CLOCK;
    }

    /** No active pixels or lines, no sync, or more sync than blanking. */
    private byte[] impossible() {
        byte[] descriptor = possible();
        descriptor[HORIZONTAL_BORDER] = 0;
        descriptor[VERTICAL_BORDER] = 0;
        switch (random.nextInt(6)) {
            case 0 -> zero(descriptor, 2, 4, 0x0F);
            case 1 -> zero(descriptor, 5, 7, 0x0F);
            case 2 -> zero(descriptor, 9, 11, 0xCF);
            case 3 -> zero(descriptor, 10, 11, 0xFC);
            case 4 -> zero(descriptor, 3, 4, 0xF0);
            default -> zero(descriptor, 6, 7, 0xF0);
        }
        return descriptor;
    }

    private static void zero(byte[] descriptor, int low, int high, int kept) {
        descriptor[low] = 0;
        descriptor[high] &= (byte) kept;
    }

    private byte[] filler() {
        byte[] descriptor = new byte[BYTES];
        Arrays.fill(descriptor, (byte) (random.nextBoolean() ? 0xFF : random.nextBoolean() ? 0x20 : 0x01));
        return descriptor;
    }

    /** From 0 on, the ends more often than chance has it. */
    private int atMost(int most) {
        int kind = random.nextInt(12);
        return kind == 0 ? 0 : kind == 1 ? most : random.nextInt(most + 1);
    }

    private Polarity polarity() {
        return random.nextBoolean() ? Polarity.POSITIVE : Polarity.NEGATIVE;
    }
}
