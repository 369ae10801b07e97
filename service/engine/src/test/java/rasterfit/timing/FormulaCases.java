package rasterfit.timing;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Random requests to the formulas, the same in every run, each with the option that asks {@code edid-decode} for it. */
final class FormulaCases {
    record CvtCase(CvtRequest request, String option) {}

    record GtfCase(GtfRequest request, String option) {}

    private static final int[][] ASPECTS = {{4, 3}, {16, 9}, {16, 10}, {5, 4}, {15, 9}};
    private static final List<String> USUAL_RATES = List.of(
            "23.976", "24", "25", "30", "47.952", "48", "50", "59.94", "60", "75", "85", "100", "119.88", "120", "144");

    private final SplittableRandom random;

    FormulaCases(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Ordinary blanking and reduced blanking of versions 1 and 2. */
    List<CvtCase> cvt(int count) {
        List<CvtCase> cases = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            CvtBlanking blanking = List.of(
                            CvtBlanking.ORDINARY,
                            CvtBlanking.REDUCED_V1,
                            CvtBlanking.REDUCED_V2,
                            CvtBlanking.REDUCED_V2_VIDEO)
                    .get(i % 4);
            String words = List.of("", ",rb=1", ",rb=2", ",rb=2,alt").get(i % 4);
            boolean forTubes = i % 4 < 2;
            boolean interlaced = forTubes && random.nextInt(4) == 0;
            boolean margins = forTubes && random.nextInt(3) == 0;
            cases.add(cvt(blanking, interlaced, margins, words));
        }
        return cases;
    }

    /** Reduced blanking of version 3, with all its parameters. */
    List<CvtCase> reducedV3(int count) {
        List<CvtCase> cases = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int pixels = 80 + 8 * random.nextInt(16);
            int micros = 460 + 35 * random.nextInt(8);
            boolean early = random.nextBoolean();
            CvtBlanking blanking = new CvtBlanking.ReducedV3(pixels, micros, early);
            String words = ",rb=3,hblank=" + pixels + ",vblank=" + micros + (early ? ",early-vsync" : "");
            cases.add(cvt(blanking, false, false, words));
        }
        return cases;
    }

    List<GtfCase> gtf(int count) {
        List<GtfCase> cases = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int width = 64 + random.nextInt(4096);
            int height = 64 + random.nextInt(2400);
            String rate = rate();
            boolean interlaced = random.nextInt(4) == 0;
            boolean margins = random.nextInt(3) == 0;
            GtfCurve curve = random.nextInt(3) == 0 ? curve() : null;
            cases.add(new GtfCase(
                    new GtfRequest(width, height, Frequency.parseHz(rate), scan(interlaced), margins, curve),
                    option(width, height, rate, interlaced, margins) + words(curve)));
        }
        return cases;
    }

    private CvtCase cvt(CvtBlanking blanking, boolean interlaced, boolean margins, String words) {
        int height = 64 + random.nextInt(4300);
        int width = 128 + random.nextInt(8000);
        if (random.nextInt(3) > 0) {
            int[] aspect = ASPECTS[random.nextInt(ASPECTS.length)];
            int step = random.nextBoolean() ? aspect[1] : 1;
            height = step * (1 + (128 + random.nextInt(2200)) / step);
            width = height * aspect[0] / aspect[1];
        }
        String rate = rate();
        return new CvtCase(
                new CvtRequest(width, height, Frequency.parseHz(rate), scan(interlaced), margins, blanking),
                option(width, height, rate, interlaced, margins) + words);
    }

    private String rate() {
        return random.nextBoolean()
                ? USUAL_RATES.get(random.nextInt(USUAL_RATES.size()))
                : 20 + random.nextInt(220) + "." + random.nextInt(1000);
    }

    /** Within what an EDID can state: C and J in halves, K and M whole; gradients that leave some blanking. */
    private GtfCurve curve() {
        return new GtfCurve(
                Rational.of(random.nextInt(128), 2),
                Rational.of(random.nextInt(2000)),
                Rational.of(random.nextInt(256)),
                Rational.of(random.nextInt(128), 2));
    }

    private static String option(int width, int height, String rate, boolean interlaced, boolean margins) {
        return "w=" + width + ",h=" + height + ",fps=" + rate + (interlaced ? ",interlaced" : "")
                + (margins ? ",overscan" : "");
    }

    private static String words(@Nullable GtfCurve curve) {
        return curve == null
                ? ""
                : ",secondary,C=" + curve.c().toDouble() + ",M=" + curve.m() + ",K=" + curve.k() + ",J="
                        + curve.j().toDouble();
    }

    private static Scan scan(boolean interlaced) {
        return interlaced ? Scan.INTERLACED : Scan.PROGRESSIVE;
    }
}
