package rasterfit.app.timing;

import java.math.BigDecimal;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.Range;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.timing.FormulaBody.CurveBody;
import rasterfit.app.timing.FormulaBody.CvtBody;
import rasterfit.app.timing.FormulaBody.GtfBody;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Border;
import rasterfit.timing.Cvt;
import rasterfit.timing.CvtBlanking;
import rasterfit.timing.CvtBlanking.ReducedV3;
import rasterfit.timing.CvtRequest;
import rasterfit.timing.FormulaLimits;
import rasterfit.timing.Gtf;
import rasterfit.timing.GtfCurve;
import rasterfit.timing.GtfRequest;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** Reads what a timing is wanted for, with all faults told at once, and lets the formula make it. */
final class FormulaReader {
    private static final Range PIXELS = range(FormulaLimits.LEAST_PIXELS, FormulaLimits.MOST_PIXELS, "pixels");
    private static final Range LINES = range(1, FormulaLimits.MOST_LINES, "lines");
    private static final Range FRAME_LINES = range(2, FormulaLimits.MOST_LINES, "lines");
    private static final Range FIELD_RATE = Range.of(
            FormulaLimits.LEAST_FIELD_RATE.hz().toString(),
            FormulaLimits.MOST_FIELD_RATE.hz().toString(),
            "Hz");
    private static final Range V3_PIXELS = range(ReducedV3.LEAST_PIXELS, ReducedV3.MOST_PIXELS, "pixels");
    private static final Range V3_MICROSECONDS = range(ReducedV3.LEAST_MICROSECONDS, ReducedV3.MOST_MICROSECONDS, "us");
    private static final Range PERCENT = Range.of("0", "127.5", "%");
    private static final Range GRADIENT = Range.of("0", GtfCurve.MOST_GRADIENT.toString(), "%/kHz");
    private static final Range SCALING = Range.of("0", GtfCurve.MOST_SCALING.toString(), "");

    private final Faults faults = new Faults();
    private final Place root = Place.root(faults);

    /** @throws rasterfit.app.problem.ProblemException with every fault of the body, or why the formula has no room */
    static GeneratedTiming generate(String engineVersion, FormulaBody body) {
        RequiredMembers.check((Record) body);
        FormulaReader reader = new FormulaReader();
        return body instanceof CvtBody cvt ? reader.cvt(engineVersion, cvt) : reader.gtf(engineVersion, (GtfBody) body);
    }

    private GeneratedTiming cvt(String engineVersion, CvtBody body) {
        CvtBlanking blanking = blanking(root.member("blanking"), body.blanking());
        boolean laterVersion = blanking instanceof CvtBlanking.ReducedV2 || blanking instanceof ReducedV3;
        if (laterVersion && body.scan() == Scan.INTERLACED) {
            root.member("scan").invalid("Reduced blanking of version 2 and 3 is progressive.");
        }
        if (laterVersion && Boolean.TRUE.equals(body.margins())) {
            root.member("margins").invalid("Reduced blanking of version 2 and 3 has no margins.");
        }
        int pixels = pixels(body);
        int lines = lines(body);
        Frequency rate = rate(body);
        CvtRequest request =
                made(root.make(() -> new CvtRequest(pixels, lines, rate, scan(body), hasMargins(body), blanking)));
        RasterTiming timing = made(root.make(() -> Cvt.timing(request)));
        return answer(engineVersion, FormulaBody.CVT, rate, timing, hasMargins(body) ? Cvt.border(request) : null);
    }

    private GeneratedTiming gtf(String engineVersion, GtfBody body) {
        int pixels = pixels(body);
        int lines = lines(body);
        Frequency rate = rate(body);
        GtfCurve curve = curve(root.member("secondaryCurve"), body.secondaryCurve());
        GtfRequest request =
                made(root.make(() -> new GtfRequest(pixels, lines, rate, scan(body), hasMargins(body), curve)));
        RasterTiming timing = made(root.make(() -> Gtf.timing(request)));
        return answer(engineVersion, FormulaBody.GTF, rate, timing, hasMargins(body) ? Gtf.border(request) : null);
    }

    private static GeneratedTiming answer(
            String engineVersion, String formula, Frequency asked, RasterTiming timing, @Nullable Border margins) {
        return GeneratedTiming.of(engineVersion, formula, asked, timing, margins);
    }

    private int pixels(FormulaBody body) {
        return root.member("horizontalActive").count(body.horizontalActive(), PIXELS);
    }

    private int lines(FormulaBody body) {
        return root.member("verticalActive")
                .count(body.verticalActive(), scan(body) == Scan.INTERLACED ? FRAME_LINES : LINES);
    }

    private Frequency rate(FormulaBody body) {
        return root.member("fieldRateHz").frequency(body.fieldRateHz(), FIELD_RATE);
    }

    private static Scan scan(FormulaBody body) {
        Scan scan = body.scan();
        return scan == null ? Scan.PROGRESSIVE : scan;
    }

    private static boolean hasMargins(FormulaBody body) {
        return Boolean.TRUE.equals(body.margins());
    }

    private static CvtBlanking blanking(Place at, @Nullable BlankingBody body) {
        if (body instanceof BlankingBody.ReducedV1BlankingBody) {
            return CvtBlanking.REDUCED_V1;
        } else if (body instanceof BlankingBody.ReducedV2BlankingBody v2) {
            return new CvtBlanking.ReducedV2(Boolean.TRUE.equals(v2.videoOptimised()));
        } else if (body instanceof BlankingBody.ReducedV3BlankingBody v3) {
            return reducedV3(at, v3);
        }
        return CvtBlanking.ORDINARY;
    }

    /** A stand-in where the body is faulty. */
    private static CvtBlanking reducedV3(Place at, BlankingBody.ReducedV3BlankingBody body) {
        Integer pixels = at.member("horizontalPixels").optionalCount(body.horizontalPixels(), V3_PIXELS);
        Integer micros = at.member("leastVerticalUs").optionalCount(body.leastVerticalUs(), V3_MICROSECONDS);
        if (at.isSound() && pixels != null && pixels % ReducedV3.PIXEL_STEP != 0) {
            at.member("horizontalPixels").invalid("It is a multiple of " + ReducedV3.PIXEL_STEP + ".");
        }
        CvtBlanking read = at.make(() -> new ReducedV3(
                pixels == null ? ReducedV3.LEAST_PIXELS : pixels,
                micros == null ? ReducedV3.USUAL_MICROSECONDS : micros,
                Boolean.TRUE.equals(body.earlySync())));
        return read == null ? CvtBlanking.REDUCED_V3 : read;
    }

    private static @Nullable GtfCurve curve(Place at, @Nullable CurveBody body) {
        if (body == null) {
            return null;
        }
        Rational c = at.member("cPercent").number(body.cPercent(), PERCENT);
        Rational m = at.member("mPercentPerKhz").number(body.mPercentPerKhz(), GRADIENT);
        Rational k = at.member("k").number(body.k(), SCALING);
        Rational j = at.member("jPercent").number(body.jPercent(), PERCENT);
        return at.make(() -> new GtfCurve(c, m, k, j));
    }

    private <T> T made(@Nullable T built) {
        faults.throwIfAny();
        return Objects.requireNonNull(built);
    }

    private static Range range(int least, int greatest, String unit) {
        return new Range(BigDecimal.valueOf(least), BigDecimal.valueOf(greatest), unit);
    }
}
