package rasterfit.edid.oracle;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import rasterfit.edid.CtaBuilder;
import rasterfit.timing.Cta861;

/** Extensions of CTA-861 with data blocks of every kind (CTA-861-I tables 62 and 64), by chance but for the seed. */
final class RandomDataBlocks {
    private static final int VIDEO = 2;
    private static final int VENDOR = 3;
    private static final int EXTENDED = 7;
    /** Bytes of data blocks and detailed timings. */
    private static final int ROOM = 123;

    private static final int DESCRIPTOR = 18;

    private final Random random;
    private final RandomTimings timings;
    private final RandomDisplayId displayId;

    RandomDataBlocks(Random random, RandomTimings timings, RandomDisplayId displayId) {
        this.random = random;
        this.displayId = displayId;
        this.timings = timings;
    }

    CtaBuilder extension() {
        CtaBuilder cta = new CtaBuilder();
        int room = ROOM;
        if (random.nextInt(8) == 0) {
            cta.revision(1 + random.nextInt(2));
        } else {
            int blocks = 1 + random.nextInt(9);
            for (int i = 0; i < blocks; i++) {
                Payload next = dataBlock();
                if (next.bytes.size() + 1 > room) {
                    break;
                }
                cta.dataBlock(
                        next.tag,
                        next.bytes.stream().mapToInt(Integer::intValue).toArray());
                room -= next.bytes.size() + 1;
            }
        }
        int most = room / DESCRIPTOR;
        int detailed = most == 0 ? 0 : random.nextInt(most + 1);
        int listed = 0;
        for (int i = 0; i < detailed; i++) {
            byte[] descriptor = timings.detailed();
            listed += RandomTimings.isSlow(descriptor) ? 0 : 1;
            cta.descriptor(descriptor);
        }
        // The tool ends in an error where more timings are native than it has listed.
        return cta.flags((random.nextInt(256) & 0xF0) | random.nextInt(listed + 1));
    }

    private record Payload(int tag, List<Integer> bytes) {
        static Payload of(int tag, int... bytes) {
            return new Payload(tag, Arrays.stream(bytes).boxed().toList());
        }

        static Payload extended(int tag, int... rest) {
            return of(
                    EXTENDED,
                    IntStream.concat(IntStream.of(tag), IntStream.of(rest)).toArray());
        }
    }

    private Payload dataBlock() {
        return switch (random.nextInt(26)) {
            case 0, 1, 2, 3 -> Payload.of(VIDEO, videos(1 + random.nextInt(31)));
            case 4, 5, 6 -> hdmi();
            case 7, 8 -> forum();
            case 9, 10, 11 -> Payload.extended(14, videos(random.nextInt(8)));
            case 12, 13, 14 -> Payload.extended(15, any(random.nextInt(5)));
            // Audio: three bytes for each format; speakers: three bytes.
            case 15 -> Payload.of(1, 0x09 + random.nextInt(7), 0x7F & random.nextInt(256), 0x07);
            case 16 -> Payload.of(4, any(3));
            case 17 -> Payload.extended(0, random.nextInt(256));
            case 18 -> Payload.extended(5, random.nextInt(256), random.nextInt(256));
            case 19 -> Payload.extended(6, 1 + random.nextInt(15), 1, 0x60, 0x50, 0x20);
            case 20 -> Payload.extended(13, preferences());
            case 21 -> Payload.extended(0x79, 0, 0, 1, random.nextInt(256), 0x80, 0);
            // A vendor that the tool does not know either.
            case 22 -> Payload.of(VENDOR, 0xEE, 0xDD, 0x0C, 1, 2);
            case 23 -> Payload.extended(34, displayId.typeViiOfCta());
            case 24 -> Payload.extended(35, 0x01, 1 + random.nextInt(0x58));
            default -> Payload.extended(0x78, 1 + random.nextInt(255));
        };
    }

    /** §7.5.1: mostly numbers that exist, native or not where the code allows; some reserved ones. */
    private int[] videos(int count) {
        int[] videos = new int[count];
        for (int i = 0; i < count; i++) {
            int vic = Cta861.all().get(random.nextInt(Cta861.all().size())).vic();
            boolean isNative = vic <= 64 && random.nextInt(5) == 0;
            videos[i] = random.nextInt(12) == 0 ? random.nextInt(256) : isNative ? vic + 128 : vic;
        }
        return videos;
    }

    /** HDMI 1.4 table 8-16 (from memory): every length; latencies, 3D flags and HDMI VICs where there is room. */
    private Payload hdmi() {
        int presence = random.nextInt(8) << 5;
        int latencies = (presence & 0x80) == 0 ? 0 : (presence & 0x40) == 0 ? 2 : 4;
        int vics = random.nextInt(5);
        boolean hasVideo = (presence & 0x20) != 0;
        int[] bytes = new int[8 + latencies + (hasVideo ? 2 + vics : 0)];
        bytes[0] = 0x03;
        bytes[1] = 0x0C;
        bytes[3] = 0x10;
        bytes[5] = random.nextInt(256);
        bytes[6] = random.nextInt(4) == 0 ? 0 : random.nextInt(256);
        bytes[7] = presence;
        for (int i = 0; i < latencies; i++) {
            bytes[8 + i] = new int[] {0, 255, 1 + random.nextInt(251)}[random.nextInt(3)];
        }
        if (hasVideo) {
            bytes[9 + latencies] = vics << 5;
            for (int i = 0; i < vics; i++) {
                bytes[10 + latencies + i] = random.nextInt(6);
            }
        }
        int shortened = random.nextInt(6) == 0 ? 5 + random.nextInt(3) : bytes.length;
        return Payload.of(VENDOR, Arrays.copyOf(bytes, shortened));
    }

    private Payload forum() {
        return Payload.of(VENDOR, 0xD8, 0x5D, 0xC4, 1, random.nextInt(3) == 0 ? 0 : random.nextInt(256), 0x80, 0);
    }

    /** §7.5.12: VICs and the first detailed timing; a place behind the tool's list would end it in an error. */
    private int[] preferences() {
        return new int[] {random.nextInt(128), 129, 193 + random.nextInt(20)};
    }

    private int[] any(int count) {
        return random.ints(count, 0, 256).toArray();
    }
}
