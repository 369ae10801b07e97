package rasterfit.app.gear;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.OfferedTiming;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.gear.ScaleAxis;

/** Reads what a converter can do with its input. */
final class ProcessingReader {
    private static final int MOST_CLASSES = 32;
    private static final int MOST_LINE_COUNTS = 32;
    private static final int MOST_TIMINGS = 256;
    private static final int MOST_DEINTERLACERS = 8;
    private static final int MOST_RATE_LOCKS = 8;
    private static final int MOST_RATES = 16;

    private ProcessingReader() {}

    static @Nullable Processing read(Place at, ProcessingBody body) {
        String id = at.id(body.id(), "processing-" + at.number());
        var pipeline = SharedReader.fact(at.member("pipelineUs"), body.pipelineUs(), Range.MICROSECONDS);
        if (body instanceof ProcessingBody.LineRepeatBody repeat) {
            return lineRepeat(at, id, repeat, pipeline);
        }
        if (body instanceof ProcessingBody.RasterScaleBody scale) {
            return rasterScale(at, id, scale, pipeline);
        }
        return at.make(() -> new Processing.FormatOnly(id, pipeline));
    }

    // NullAway does not see the mark on a nested type that it reads from a class file; samplesPerLine may be null.
    @SuppressWarnings("NullAway")
    private static @Nullable Processing lineRepeat(
            Place at, String id, ProcessingBody.LineRepeatBody body, rasterfit.gear.Fact pipeline) {
        List<Processing.LineCounts> lines =
                at.member("lines").each(body.lines(), 1, MOST_CLASSES, ProcessingReader::lineCounts);
        var samples = ConverterReader.range(at.member("samplesPerLine"), body.samplesPerLine());
        var latestStart = SharedReader.fact(at.member("latestStartLines"), body.latestStartLines(), Range.START_LINES);
        Integer buffer = at.member("bufferLines").optionalCount(body.bufferLines(), Range.BUFFER_LINES);
        var interlaced = body.interlaced() == null ? Assumptions.INTERLACED_REPEAT : body.interlaced();
        return at.make(() -> new Processing.LineRepeat(id, lines, samples, latestStart, buffer, interlaced, pipeline));
    }

    private static Processing.@Nullable LineCounts lineCounts(Place at, ProcessingBody.LineCountsBody body) {
        int from = at.member("from").count(body.from(), Range.LINES);
        List<Integer> to = at.member("to")
                .each(body.to(), 1, MOST_LINE_COUNTS, (place, written) -> multiple(place, written, from));
        return at.make(() -> new Processing.LineCounts(body.lineStandard(), from, to));
    }

    private static Integer multiple(Place at, BigDecimal written, int from) {
        int count = at.count(written, Range.LINES);
        if (at.isSound() && (count < from || count % from != 0)) {
            at.invalid(count + " lines are not a whole multiple of " + from + ".");
        }
        return count;
    }

    private static @Nullable Processing rasterScale(
            Place at, String id, ProcessingBody.RasterScaleBody body, rasterfit.gear.Fact pipeline) {
        List<OfferedTiming> timings =
                at.member("timings").each(body.timings(), 1, MOST_TIMINGS, ProcessingReader::offered);
        at.member("timings").distinct(timings, OfferedTiming::label);
        ScaleAxis vertical = axis(at.member("vertical"), body.vertical(), "maxCropLines", "maxCropDots");
        ScaleAxis horizontal = axis(at.member("horizontal"), body.horizontal(), "maxCropDots", "maxCropLines");
        List<Deinterlacer> deinterlacers = at.member("deinterlacers")
                .each(body.deinterlacers(), 0, MOST_DEINTERLACERS, ProcessingReader::deinterlacer);
        List<RateLock> locks =
                at.member("rateLocks").each(body.rateLocks(), 1, MOST_RATE_LOCKS, ProcessingReader::lock);
        return vertical == null || horizontal == null
                ? null
                : at.make(() ->
                        new Processing.RasterScale(id, timings, vertical, horizontal, deinterlacers, locks, pipeline));
    }

    private static @Nullable OfferedTiming offered(Place at, String reference) {
        NamedTiming timing = TimingReferences.read(at, reference);
        return timing == null ? null : new OfferedTiming(timing.label(), timing.timing(), timing.pictureAspect());
    }

    private static @Nullable ScaleAxis axis(Place at, ProcessingBody.ScaleAxisBody body, String crop, String other) {
        boolean isVertical = crop.equals("maxCropLines");
        BigDecimal written = isVertical ? body.maxCropLines() : body.maxCropDots();
        if ((isVertical ? body.maxCropDots() : body.maxCropLines()) != null) {
            at.member(other).invalid("The crop of this direction is " + crop + ".");
        }
        int taps = at.member("taps").count(body.taps(), Range.TAPS);
        if (at.isSound() && taps != 1 && taps % 2 != 0) {
            at.member("taps").invalid("Filter taps are 1 or an even number.");
        }
        int maxCrop = written == null ? 0 : at.member(crop).count(written, Range.CROP);
        return at.make(() -> new ScaleAxis(body.factors(), taps, maxCrop));
    }

    private static @Nullable Deinterlacer deinterlacer(Place at, ProcessingBody.DeinterlacerBody body) {
        var addedFields = SharedReader.fact(at.member("addedFields"), body.addedFields(), Range.FIELDS);
        return at.make(() -> new Deinterlacer(body.kind(), addedFields, Boolean.TRUE.equals(body.wholeFrame())));
    }

    private static @Nullable RateLock lock(Place at, ProcessingBody.RateLockBody body) {
        if (body instanceof ProcessingBody.SourceLockedBody locked) {
            var pull = at.member("pullPpm").number(locked.pullPpm(), Range.PULL_PPM);
            var nominal = at.member("nominalHz").optionalFrequency(locked.nominalHz(), Range.FIELD_RATE);
            Integer buffer = at.member("bufferLines").optionalCount(locked.bufferLines(), Range.BUFFER_LINES);
            return at.make(() -> new RateLock.SourceLocked(pull, nominal, buffer));
        }
        if (body instanceof ProcessingBody.FreeRunningBody free) {
            var rates = new ArrayList<>(at.member("ratesHz")
                    .each(free.ratesHz(), 0, MOST_RATES, (place, rate) -> place.frequency(rate, Range.FIELD_RATE)));
            Integer stores = at.member("fieldStores").optionalCount(free.fieldStores(), Range.FIELD_STORES);
            return at.make(() -> new RateLock.FreeRunning(rates, stores == null ? Assumptions.FIELD_STORES : stores));
        }
        ProcessingBody.VariableRefreshBody variable = (ProcessingBody.VariableRefreshBody) body;
        Integer buffer = at.member("bufferLines").optionalCount(variable.bufferLines(), Range.BUFFER_LINES);
        return at.make(() -> new RateLock.VariableRefresh(buffer));
    }
}
