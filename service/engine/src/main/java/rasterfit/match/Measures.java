package rasterfit.match;

import org.jspecify.annotations.Nullable;
import rasterfit.gear.DisplayTest;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/**
 * What a setting does to one mode; exact. Members that do not apply are absent: a tube has no grid, a free-running
 * output holds no countable lines, a digital link is not sampled.
 */
public record Measures(
        Rational pixelAspectRatio,
        PixelAspectConvention pixelAspectConvention,
        @Nullable Sampling sampling,
        Shape shape,
        Latency addedLatencyMs,
        Rational addedLatencyFields,
        Latency displayLagMs,
        Latency totalLatencyMs,
        @Nullable Integer bufferedLines,
        @Nullable Integer fieldStores,
        @Nullable Rational dropOrRepeatEverySeconds,
        @Nullable Rational tearDriftPicturesPerSecond,
        Acceptance acceptance,
        @Nullable Detail linkDetail) {

    /**
     * @param samplesPerDot r
     * @param dotLocked whether r is whole
     * @param leastSamplesPerDot of any dot
     * @param leastShare share of the dots that are so narrow
     * @param beatPeriodDots dots after which the pattern of widths repeats; absent when dot-locked
     * @param alias where the finest detail of the source lands when it is under-sampled; absent otherwise
     * @param edgeSoftness share of a dot that its edge takes
     * @param usablePhaseShare for one sample per dot
     * @param usablePhaseSteps for one sample per dot where the digitiser has steps
     * @param softSamplesPerDot for a whole number of two or more samples per dot
     * @param considered how many sample counts were considered
     */
    public record Sampling(
            int samplesPerLine,
            Rational samplesPerDot,
            Frequency sampleRate,
            boolean dotLocked,
            int leastSamplesPerDot,
            int greatestSamplesPerDot,
            Rational leastShare,
            @Nullable Rational beatPeriodDots,
            @Nullable Frequency alias,
            double edgeSoftness,
            @Nullable Double usablePhaseShare,
            @Nullable Integer usablePhaseSteps,
            @Nullable Integer softSamplesPerDot,
            int considered) {}

    /**
     * Cropped counts are exact and may be fractions where overscan cuts.
     *
     * @param verticalScale panel rows per source line (frame line if interlaced); absent on a tube
     * @param horizontalScale panel columns per dot; absent on a tube
     * @param leastDotWidth in panel columns; absent on a tube
     * @param blendedColumnsPercent panel columns of the picture that mix dots, by filter taps or by the panel
     */
    public record Shape(
            @Nullable Rational verticalScale,
            @Nullable Rational horizontalScale,
            Rational aspectErrorPercent,
            Rational coveragePercent,
            Rational coverageHeightPercent,
            Rational croppedLines,
            Rational croppedDots,
            Rational croppedUsedLines,
            Rational croppedUsedDots,
            Rational croppedUsedLinesPercent,
            @Nullable Integer leastDotWidth,
            @Nullable Integer greatestDotWidth,
            @Nullable Integer leastLineHeight,
            @Nullable Integer greatestLineHeight,
            @Nullable Rational blendedColumnsPercent) {

        public @Nullable Rational dotWidthRatio() {
            return ratio(leastDotWidth, greatestDotWidth);
        }

        public @Nullable Rational lineHeightRatio() {
            return ratio(leastLineHeight, greatestLineHeight);
        }

        private static @Nullable Rational ratio(@Nullable Integer least, @Nullable Integer greatest) {
            if (least == null || greatest == null) {
                return null;
            }
            return greatest == 0 ? Rational.ZERO : Rational.of(least, greatest);
        }
    }

    /**
     * @param listedAs label of the raster that it equals or is near to
     * @param deviations against the listed raster that is nearest; absent where none has the same active counts
     * @param tested the owner's own test that decided; absent if there is none
     * @param fallback a setting on the same equipment that is tested, listed or near-listed; absent when not needed or when
     *     there is none
     */
    public record Acceptance(
            AcceptanceGrade grade,
            @Nullable String listedAs,
            @Nullable Deviations deviations,
            @Nullable DisplayTest tested,
            @Nullable Fallback fallback) {}

    /** @param against label of the listed raster, and its field rate where two nominal ones count */
    public record Deviations(
            String against,
            Rational horizontalTotal,
            Rational verticalTotal,
            Rational lineRatePercent,
            Rational fieldRatePercent,
            Rational pixelClockPercent) {}

    /** @param listedAs absent where the owner saw a raster that is not listed */
    public record Fallback(AcceptanceGrade grade, @Nullable String listedAs, Settings settings, double score) {}

    /** @param bandwidth of the whole link; ratios are at most 1 */
    public record Detail(Frequency bandwidth, Rational luma, Rational chroma, Rational combined) {}
}
