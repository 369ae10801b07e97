package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Basis;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Estimate;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.RateLock;
import rasterfit.match.Latency;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.quantity.TimeSpan;
import rasterfit.rule.ProcessingRules;
import rasterfit.rule.Refusal;
import rasterfit.timing.RasterTiming;

/**
 * Delay of a scaler: lines held by a locked output, fields stored by a free-running one, fields added by deinterlacing
 * or by an input that takes half-height rasters as interlaced, and the electronics.
 *
 * @param fieldRate of the output
 * @param deinterlacer absent where nothing is deinterlaced
 */
record ScaleDelay(
        Captured captured,
        ConverterInput input,
        Processing.RasterScale scale,
        RasterTiming timing,
        Placement placement,
        Frequency fieldRate,
        @Nullable Deinterlacer deinterlacer) {

    private static final String FRAME_FORMULA =
            "greatest over rows j of (a + needed(j) + 1)·T/L − (ao + j)·T/Lo; needed(j) ="
                    + " min(n−1, ⌊j·n/no⌋) for k = 1, min(n−1, ⌊((2j+1)·n/no − 1)/2⌋ + k/2) for even k";
    private static final String FIELDS_FORMULA = "greatest over rows j of both fields of (a + h + needed(j) + 1)·T/L −"
            + " (ao + j)·T/Lo; top field h = 0, q = 1/4; bottom field h = 1/2, q = −1/4; needed(j) = ⌊j·n/no + q⌋ for k = 1,"
            + " ⌊(j + 1/2)·n/no − 1/2 + q⌋ + k/2 for even k, between 0 and n−1; row j shows line ⌊j·n/no + q⌋";

    Layout.Added of(Mode mode, RateLock lock, Steps steps) {
        if (lock instanceof RateLock.FreeRunning free) {
            return freeRunning(mode, free, steps);
        }
        Integer memory = lock instanceof RateLock.SourceLocked locked
                ? locked.bufferLines()
                : ((RateLock.VariableRefresh) lock).bufferLines();
        return locked(mode, memory, steps);
    }

    private Rational pipelineMs() {
        return Layout.pipelineMs(scale.pipelineUs().orAssume(Assumptions.PIPELINE_US));
    }

    private Estimate addedFields(Mode mode) {
        Estimate fields = Assumptions.NO_FIELDS;
        if (deinterlacer != null) {
            fields = deinterlacer
                    .addedFields()
                    .orAssume(
                            deinterlacer.kind() == Deinterlacer.Kind.MOTION_ADAPTIVE
                                    ? Assumptions.MOTION_ADAPTIVE_FIELDS
                                    : Assumptions.NO_FIELDS);
        }
        if (mode.isHalfHeightProgressive() && input.halfHeight() == HalfHeight.AS_INTERLACED) {
            fields = fields.plus(input.halfHeightAddedFields().orAssume(Assumptions.HALF_HEIGHT_FIELDS));
        }
        return fields;
    }

    private Layout.Added locked(Mode mode, @Nullable Integer memory, Steps steps) {
        Estimate fields = addedFields(mode);
        Rational pipelineMs = pipelineMs();
        int halfLines = (int) mode.linesPerField().times(2).floor();
        int firstLine = captured.firstLine() + placement.firstLine();
        LockedLatency latency = new LockedLatency(
                halfLines,
                firstLine,
                placement.lines(),
                captured.isInterlaced(),
                timing.verticalTotal(),
                timing.firstActiveLine() + placement.top(),
                placement.rows(),
                scale.vertical().taps());
        LockedLatency.Result result = latency.measure();
        Rational fieldMs = mode.fieldRate().period().millis();
        int capacity = result.capacity() + storedFieldLines(halfLines);
        steps.tell(
                "bufferOffsetD",
                step -> step.in("T", fieldMs, "ms")
                        .in("L", mode.linesPerField(), "lines per field")
                        .in("a", firstLine, "first line")
                        .in("n", placement.lines(), "lines")
                        .in("Lo", timing.verticalTotal(), "output lines")
                        .in("ao", timing.firstActiveLine() + (long) placement.top(), "first row")
                        .in("no", placement.rows(), "rows")
                        .in("k", scale.vertical().taps(), "taps")
                        .by(
                                captured.isInterlaced() ? FIELDS_FORMULA : FRAME_FORMULA,
                                "arithmetic: no row starts before its lines have arrived")
                        .gives(result.offset().times(fieldMs), "ms"));
        steps.tell(
                "addedLatencyMs",
                step -> step.in("D", result.offset().times(fieldMs), "ms")
                        .in("added fields", fields.typical(), "")
                        .in("pipeline", pipelineMs, "ms")
                        .by(
                                "D + (ao + j)·T/Lo − (a + i)·T/L + fields·T + pipeline for row j that shows line i; greatest over"
                                        + " rows",
                                "arithmetic")
                        .gives(
                                result.greatest()
                                        .plus(fields.greatest())
                                        .times(fieldMs)
                                        .plus(pipelineMs),
                                "ms"));
        steps.tell(
                "bufferedLines",
                step -> step.in("greatest latency", result.greatest().times(fieldMs), "ms")
                        .in("T/Lo", fieldMs.dividedBy(timing.verticalTotal()), "ms")
                        .in("T/L", mode.lineRate().period().millis(), "ms")
                        .in("k", scale.vertical().taps(), "taps")
                        .by(
                                "⌈(greatest latency + T/Lo) / (T/L)⌉ + k/2 − 1 lines behind (for k ≥ 2), + stored fields",
                                "arithmetic")
                        .gives(Rational.of(capacity), "lines"));
        Latency ms = new Latency(
                toMs(result.top(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.bottom(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.least(), fields.least(), fieldMs, pipelineMs),
                toMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                toMs(result.greatest(), fields.greatest(), fieldMs, pipelineMs),
                Basis.COMPUTED);
        Refusal refusal =
                memory == null ? null : ProcessingRules.memory(capacity, memory).orElse(null);
        return new Layout.Added(ms, capacity, null, refusal);
    }

    /** Weaving and motion adaptation keep a whole earlier field beside the lines on their way. */
    private int storedFieldLines(int halfLines) {
        boolean keeps = deinterlacer != null && deinterlacer.kind() != Deinterlacer.Kind.BOB;
        return keeps ? (halfLines + 1) / 2 : 0;
    }

    private static Rational toMs(Rational fields, Rational added, Rational fieldMs, Rational pipelineMs) {
        return fields.plus(added).times(fieldMs).plus(pipelineMs);
    }

    private Layout.Added freeRunning(Mode mode, RateLock.FreeRunning free, Steps steps) {
        Estimate fields = addedFields(mode);
        Rational pipelineMs = pipelineMs();
        TimeSpan outputPeriod = fieldRate.period();
        TimeSpan line = mode.lineRate().period();
        TimeSpan period = mode.fieldRate().period();
        FreeLatency latency = new FreeLatency(
                line,
                period,
                placement.lines(),
                captured.isInterlaced(),
                outputPeriod.dividedBy(Rational.of(timing.verticalTotal())),
                outputPeriod,
                placement.rows(),
                free.fieldStores());
        FreeLatency.Result result = latency.measure();
        Rational fieldMs = period.millis();
        Latency ms = new Latency(
                freeMs(result.top(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.bottom(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.least(), fields.least(), fieldMs, pipelineMs),
                freeMs(result.middle(), fields.typical(), fieldMs, pipelineMs),
                freeMs(result.greatest(), fields.greatest(), fieldMs, pipelineMs),
                Basis.COMPUTED);
        steps.tell(
                "addedLatencyMs",
                step -> step.in("T", fieldMs, "ms")
                        .in("T/L", line.millis(), "ms")
                        .in("n", placement.lines(), "lines")
                        .in("To", outputPeriod.millis(), "ms")
                        .in("Lo", timing.verticalTotal(), "output lines")
                        .in("no", placement.rows(), "rows")
                        .in("field stores", free.fieldStores(), "")
                        .in("added fields", fields.typical(), "")
                        .in("pipeline", pipelineMs, "ms")
                        .by(
                                free.fieldStores() == 1
                                        ? "T/L + age + fields·T + pipeline, age from 0 to min(T, To)"
                                        : "(n − i)·T/L + age + j·To/Lo + fields·T + pipeline for row j that shows line i, age from"
                                                + " 0 to min(T, To); greatest over rows and ages",
                                "arithmetic")
                        .gives(ms.greatest(), "ms"));
        return new Layout.Added(ms, null, free.fieldStores(), null);
    }

    private static Rational freeMs(TimeSpan span, Rational added, Rational fieldMs, Rational pipelineMs) {
        return span.millis().plus(added.times(fieldMs)).plus(pipelineMs);
    }
}
