package rasterfit.edid.oracle;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import rasterfit.edid.DisplayIdBuilder;
import rasterfit.edid.DisplayIdDescriptors;
import rasterfit.quantity.Frequency;
import rasterfit.timing.Border;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/**
 * Sections of DisplayID with timing blocks of the kinds that the tool reads aright, by chance but for the seed. The others, and
 * counts of every size, are in {@code DisplayIdOracleTest}.
 */
final class RandomDisplayId {
    private static final int CELL = 8;

    private final Random random;

    RandomDisplayId(Random random) {
        this.random = random;
    }

    byte[] section() {
        DisplayIdBuilder section = DisplayIdBuilder.version(random.nextBoolean() ? 0x13 : 0x20);
        int blocks = random.nextInt(3);
        for (int i = 0; i <= blocks; i++) {
            switch (random.nextInt(7)) {
                case 0 -> section.block(0x03, 1, DisplayIdDescriptors.typeI(stated(), random.nextInt(6), coin()));
                case 1 -> section.block(0x06, 0x01, codes(dmts()));
                case 2 -> section.block(0x06, 0x41, codes(vics()));
                case 3 -> section.block(0x13, 0, DisplayIdDescriptors.typeVi(stated(), coin(), coin()));
                case 4 -> section.block(0x22, random.nextInt(3), typeVii());
                case 5 -> section.block(0x23, 0x40, codes(vics()));
                default -> section.block(0x24, 0, typeIx());
            }
        }
        return section.build();
    }

    /** Revision and flags, then one descriptor, for the block inside CTA-861 with extended tag 34. */
    int[] typeViiOfCta() {
        return IntStream.concat(IntStream.of(random.nextInt(3)), IntStream.of(typeVii()))
                .toArray();
    }

    private int[] typeVii() {
        return DisplayIdDescriptors.typeVii(stated(), random.nextInt(9), coin());
    }

    /** Ordinary and first reduced blanking, whole cells. */
    private int[] typeIx() {
        return DisplayIdDescriptors.typeIx(
                CELL * (20 + random.nextInt(900)),
                120 + random.nextInt(3000),
                1 + random.nextInt(250),
                random.nextInt(2),
                false);
    }

    /** A progressive one of DMT with what every type has room for; types I and II count clocks in 10 kHz. */
    private RasterTiming stated() {
        List<RasterTiming> timings = Dmt.all().stream()
                .filter(monitor -> monitor.border().equals(Border.NONE))
                .map(Dmt.MonitorTiming::timing)
                .filter(timing -> timing.scan() == Scan.PROGRESSIVE)
                .filter(timing -> timing.verticalFrontPorch() > 0 && timing.verticalSync() <= 16)
                .toList();
        return timings.get(random.nextInt(timings.size()))
                .atPixelClock(Frequency.ofHz(10_000L * (1 + random.nextInt(400_000))));
    }

    private int[] codes(List<Integer> numbers) {
        return IntStream.range(0, 1 + random.nextInt(8))
                .map(i -> numbers.get(random.nextInt(numbers.size())))
                .toArray();
    }

    private static List<Integer> dmts() {
        return Dmt.all().stream().map(Dmt.MonitorTiming::id).toList();
    }

    private static List<Integer> vics() {
        return Cta861.all().stream().map(video -> video.vic()).toList();
    }

    private boolean coin() {
        return random.nextBoolean();
    }
}
