package rasterfit.app.match;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import rasterfit.app.answer.Plain;
import rasterfit.gear.Basis;
import rasterfit.gear.DisplayTest;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Latency;
import rasterfit.match.Measures;
import rasterfit.match.PixelAspectConvention;

/**
 * What a setting does to one mode. Members that do not apply are absent: a tube has no grid, a free-running output holds
 * no countable lines, a digital link is not sampled.
 *
 * @param pixelAspectRatio width to height of a dot, exact
 * @param samplesPerDot exact
 * @param verticalScale panel rows per source line (frame line if interlaced), exact
 * @param horizontalScale panel columns per dot, exact
 * @param aspectErrorPercent 100 · (achieved dot shape / intended − 1)
 * @param croppedLines against the active area
 * @param croppedUsedLines against the area really drawn
 * @param coveragePercent drawn picture to visible panel area
 * @param leastDotWidth in panel columns
 * @param leastLineHeight in panel rows
 * @param dotWidthRatio least to greatest; 0 when a dot vanishes
 * @param blendedColumnsPercent panel columns of the picture that mix dots
 * @param addedLatencyMs of the converter
 * @param totalLatencyMs of converter and display
 * @param bufferedLines line capacity needed
 * @param fieldStores whole fields of memory used
 * @param acceptance how sure it is that the display shows the raster
 * @param listedAs the timing of the display that it equals or is near to
 * @param deviations against the nearest listed timing with the same active counts
 * @param tested the owner's own test of this raster on this input, which decided the acceptance
 * @param fallback a tested, listed or near-listed setting on the same equipment
 */
record MeasuresAnswer(
        String pixelAspectRatio,
        PixelAspectConvention pixelAspectConvention,
        @Nullable String samplesPerDot,
        @Nullable String verticalScale,
        @Nullable String horizontalScale,
        BigDecimal aspectErrorPercent,
        BigDecimal croppedLines,
        BigDecimal croppedDots,
        BigDecimal croppedUsedLines,
        BigDecimal croppedUsedDots,
        BigDecimal croppedUsedLinesPercent,
        BigDecimal coveragePercent,
        BigDecimal coverageHeightPercent,
        @Nullable Integer leastDotWidth,
        @Nullable Integer greatestDotWidth,
        @Nullable Integer leastLineHeight,
        @Nullable Integer greatestLineHeight,
        @Nullable BigDecimal dotWidthRatio,
        @Nullable BigDecimal lineHeightRatio,
        @Nullable BigDecimal blendedColumnsPercent,
        LatencyAnswer addedLatencyMs,
        BigDecimal addedLatencyFields,
        LatencyAnswer displayLagMs,
        LatencyAnswer totalLatencyMs,
        @Nullable Integer bufferedLines,
        @Nullable Integer fieldStores,
        @Nullable BigDecimal dropOrRepeatEverySeconds,
        @Nullable BigDecimal tearDriftPicturesPerSecond,
        AcceptanceGrade acceptance,
        @Nullable String listedAs,
        @Nullable DeviationsAnswer deviations,
        @Nullable TestedAnswer tested,
        @Nullable FallbackAnswer fallback,
        @Nullable SamplingAnswer sampling,
        @Nullable LinkDetailAnswer linkDetail) {

    /**
     * Delay per picture line, in ms.
     *
     * @param middle of source line ⌊n/2⌋ of the n lines shown
     * @param least over all output lines
     * @param typical the middle line at mean age
     * @param greatest over all output lines
     */
    record LatencyAnswer(
            BigDecimal top,
            BigDecimal middle,
            BigDecimal bottom,
            BigDecimal least,
            BigDecimal typical,
            BigDecimal greatest,
            Basis basis) {
        static LatencyAnswer of(Latency latency) {
            return new LatencyAnswer(
                    Plain.of(latency.top()),
                    Plain.of(latency.middle()),
                    Plain.of(latency.bottom()),
                    Plain.of(latency.least()),
                    Plain.of(latency.typical()),
                    Plain.of(latency.greatest()),
                    latency.basis());
        }
    }

    /** @param against the listed timing, and which of its rates where two count */
    record DeviationsAnswer(
            String against,
            BigDecimal horizontalTotal,
            BigDecimal verticalTotal,
            BigDecimal lineRatePercent,
            BigDecimal fieldRatePercent,
            BigDecimal pixelClockPercent) {
        static DeviationsAnswer of(Measures.Deviations deviations) {
            return new DeviationsAnswer(
                    deviations.against(),
                    Plain.of(deviations.horizontalTotal()),
                    Plain.of(deviations.verticalTotal()),
                    Plain.of(deviations.lineRatePercent()),
                    Plain.of(deviations.fieldRatePercent()),
                    Plain.of(deviations.pixelClockPercent()));
        }
    }

    /** What the owner saw, on which day (RFC 3339), and with which firmware of the display where that was noted. */
    record TestedAnswer(
            DisplayTest.Outcome outcome,
            String on,
            @Nullable String firmware) {
        static TestedAnswer of(DisplayTest test) {
            return new TestedAnswer(test.outcome(), test.on().toString(), test.firmware());
        }
    }

    /** @param listedAs absent where the owner saw a raster that is not listed */
    record FallbackAnswer(
            AcceptanceGrade acceptance, @Nullable String listedAs, SettingsAnswer settings, BigDecimal score) {
        static FallbackAnswer of(Measures.Fallback fallback) {
            return new FallbackAnswer(
                    fallback.grade(),
                    fallback.listedAs(),
                    SettingsAnswer.of(fallback.settings()),
                    Plain.of(fallback.score()));
        }
    }

    /**
     * How the lines are sampled.
     *
     * @param dotLocked whether every dot gets the same whole number of samples
     * @param leastSamplesShare share of the dots that get the least number of samples
     * @param beatPeriodDots dots after which the pattern of widths repeats; absent when dot-locked
     * @param aliasHz where the finest detail lands when it is under-sampled; absent otherwise
     * @param edgeSoftness share of a dot that its edge takes
     * @param usablePhaseShare for one sample per dot
     * @param usablePhaseSteps for one sample per dot where the digitiser has steps
     * @param softSamplesPerDot for a whole number of two or more samples per dot
     * @param consideredCounts how many sample counts were considered
     */
    record SamplingAnswer(
            int samplesPerLine,
            String sampleRateHz,
            boolean dotLocked,
            int leastSamplesPerDot,
            int greatestSamplesPerDot,
            BigDecimal leastSamplesShare,
            @Nullable BigDecimal beatPeriodDots,
            @Nullable String aliasHz,
            BigDecimal edgeSoftness,
            @Nullable BigDecimal usablePhaseShare,
            @Nullable Integer usablePhaseSteps,
            @Nullable Integer softSamplesPerDot,
            int consideredCounts) {
        static SamplingAnswer of(Measures.Sampling sampling) {
            return new SamplingAnswer(
                    sampling.samplesPerLine(),
                    Plain.exact(sampling.sampleRate()),
                    sampling.dotLocked(),
                    sampling.leastSamplesPerDot(),
                    sampling.greatestSamplesPerDot(),
                    Plain.of(sampling.leastShare()),
                    Plain.orAbsent(sampling.beatPeriodDots()),
                    Plain.exactOrAbsent(sampling.alias()),
                    Plain.of(sampling.edgeSoftness()),
                    Plain.orAbsent(sampling.usablePhaseShare()),
                    sampling.usablePhaseSteps(),
                    sampling.softSamplesPerDot(),
                    sampling.considered());
        }
    }

    /** How much of the finest detail the analog link passes; ratios are at most 1. */
    record LinkDetailAnswer(String bandwidthHz, BigDecimal luma, BigDecimal chroma, BigDecimal combined) {
        static LinkDetailAnswer of(Measures.Detail detail) {
            return new LinkDetailAnswer(
                    Plain.exact(detail.bandwidth()),
                    Plain.of(detail.luma()),
                    Plain.of(detail.chroma()),
                    Plain.of(detail.combined()));
        }
    }

    static MeasuresAnswer of(Measures measures) {
        Measures.Shape shape = measures.shape();
        Measures.Acceptance acceptance = measures.acceptance();
        Measures.Sampling sampling = measures.sampling();
        return new MeasuresAnswer(
                measures.pixelAspectRatio().toString(),
                measures.pixelAspectConvention(),
                sampling == null ? null : sampling.samplesPerDot().toString(),
                Plain.exactOrAbsent(shape.verticalScale()),
                Plain.exactOrAbsent(shape.horizontalScale()),
                Plain.of(shape.aspectErrorPercent()),
                Plain.of(shape.croppedLines()),
                Plain.of(shape.croppedDots()),
                Plain.of(shape.croppedUsedLines()),
                Plain.of(shape.croppedUsedDots()),
                Plain.of(shape.croppedUsedLinesPercent()),
                Plain.of(shape.coveragePercent()),
                Plain.of(shape.coverageHeightPercent()),
                shape.leastDotWidth(),
                shape.greatestDotWidth(),
                shape.leastLineHeight(),
                shape.greatestLineHeight(),
                Plain.orAbsent(shape.dotWidthRatio()),
                Plain.orAbsent(shape.lineHeightRatio()),
                Plain.orAbsent(shape.blendedColumnsPercent()),
                LatencyAnswer.of(measures.addedLatencyMs()),
                Plain.of(measures.addedLatencyFields()),
                LatencyAnswer.of(measures.displayLagMs()),
                LatencyAnswer.of(measures.totalLatencyMs()),
                measures.bufferedLines(),
                measures.fieldStores(),
                Plain.orAbsent(measures.dropOrRepeatEverySeconds()),
                Plain.orAbsent(measures.tearDriftPicturesPerSecond()),
                acceptance.grade(),
                acceptance.listedAs(),
                acceptance.deviations() == null ? null : DeviationsAnswer.of(acceptance.deviations()),
                acceptance.tested() == null ? null : TestedAnswer.of(acceptance.tested()),
                acceptance.fallback() == null ? null : FallbackAnswer.of(acceptance.fallback()),
                sampling == null ? null : SamplingAnswer.of(sampling),
                measures.linkDetail() == null ? null : LinkDetailAnswer.of(measures.linkDetail()));
    }
}
