package rasterfit.replay;

import java.util.Arrays;
import java.util.List;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.ScaleAxis;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Matcher;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.WorkLimit;
import rasterfit.match.Workbench;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;
import rasterfit.timing.VideoTiming;

/** A request with its answer and the replay that judges it. */
record Bench(MatchRequest request, MatchResult result, Replay replay) {
    static final int SETTINGS_PER_ROUTE = 40;

    static Bench of(Workbench workbench) {
        return of(workbench, PixelAspectConvention.BROADCAST);
    }

    static Bench of(Workbench workbench, PixelAspectConvention convention) {
        MatchRequest asked = workbench.settingsPerRoute(SETTINGS_PER_ROUTE).request();
        MatchRequest request = new MatchRequest(
                asked.sourceName(),
                asked.source(),
                asked.display(),
                asked.equipment(),
                asked.intent(),
                asked.weights(),
                asked.limits(),
                convention,
                asked.explain(),
                asked.top(),
                asked.settingsPerRoute());
        return new Bench(
                request,
                new Matcher(WorkLimit.DEFAULT).match(request, Catalogue.EMPTY),
                new Replay(
                        request.source(), request.display(), request.equipment().converters()));
    }

    RankedSetup best() {
        return result.ranked().get(0);
    }

    /** Any factors in both directions, 7 µs of electronics. */
    static Processing scale(int taps, List<Deinterlacer> deinterlacers, RateLock lock, int... vics) {
        return scale(ScaleAxis.Factors.ANY, taps, deinterlacers, lock, vics);
    }

    static Processing scale(
            ScaleAxis.Factors factors, int taps, List<Deinterlacer> deinterlacers, RateLock lock, int... vics) {
        List<OfferedTiming> offered = Arrays.stream(vics)
                .mapToObj(vic -> {
                    VideoTiming timing = Cta861.find(vic).orElseThrow();
                    return new OfferedTiming("vic:" + vic, timing.timing(), timing.pictureAspect());
                })
                .toList();
        return new Processing.RasterScale(
                "scale",
                offered,
                new ScaleAxis(factors, taps, 96),
                new ScaleAxis(factors, taps, 64),
                deinterlacers,
                List.of(lock),
                Fact.known(7));
    }

    static Deinterlacer deinterlacer(Deinterlacer.Kind kind, Fact addedFields) {
        return new Deinterlacer(kind, addedFields, kind == Deinterlacer.Kind.WEAVE);
    }

    /** From 240 and 288 lines, three microseconds and a third of electronics. */
    static Processing repeat(Fact latestStartLines, Processing.InterlacedFields interlaced) {
        return new Processing.LineRepeat(
                "repeat",
                List.of(
                        new Processing.LineCounts(LineStandard.L525_60, 240, List.of(480, 720, 960)),
                        new Processing.LineCounts(LineStandard.L625_50, 288, List.of(576, 864))),
                null,
                latestStartLines,
                null,
                interlaced,
                Fact.known(Rational.of(10, 3)));
    }
}
