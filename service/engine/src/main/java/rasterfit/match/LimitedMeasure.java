package rasterfit.match;

import java.util.Optional;

/** The measures on which a request can put a limit. Latencies take one of their figures behind a dot. */
public enum LimitedMeasure {
    ADDED_LATENCY_MS("addedLatencyMs", "ms", true),
    DISPLAY_LAG_MS("displayLagMs", "ms", true),
    TOTAL_LATENCY_MS("totalLatencyMs", "ms", true),
    ADDED_LATENCY_FIELDS("addedLatencyFields", "fields", false),
    BUFFERED_LINES("bufferedLines", "lines", false),
    ASPECT_ERROR_PERCENT("aspectErrorPercent", "%", false),
    COVERAGE_PERCENT("coveragePercent", "%", false),
    COVERAGE_HEIGHT_PERCENT("coverageHeightPercent", "%", false),
    CROPPED_LINES("croppedLines", "lines", false),
    CROPPED_DOTS("croppedDots", "dots", false),
    CROPPED_USED_LINES("croppedUsedLines", "lines", false),
    CROPPED_USED_DOTS("croppedUsedDots", "dots", false),
    CROPPED_USED_LINES_PERCENT("croppedUsedLinesPercent", "%", false),
    DOT_WIDTH_RATIO("dotWidthRatio", "", false),
    LINE_HEIGHT_RATIO("lineHeightRatio", "", false),
    VERTICAL_SCALE("verticalScale", "", false),
    HORIZONTAL_SCALE("horizontalScale", "", false),
    SAMPLES_PER_DOT("samplesPerDot", "", false),
    DROP_OR_REPEAT_EVERY_SECONDS("dropOrRepeatEverySeconds", "s", false),
    ACCEPTANCE("acceptance", "", false),
    PRICE("price", "", false);

    private final String id;
    private final String unit;
    private final boolean latency;

    LimitedMeasure(String id, String unit, boolean latency) {
        this.id = id;
        this.unit = unit;
        this.latency = latency;
    }

    public String id() {
        return id;
    }

    public String unit() {
        return unit;
    }

    /** Whether it has the figures top, middle, bottom, least, typical and greatest. */
    public boolean isLatency() {
        return latency;
    }

    public static Optional<LimitedMeasure> byId(String id) {
        for (LimitedMeasure measure : values()) {
            if (measure.id.equals(id)) {
                return Optional.of(measure);
            }
        }
        return Optional.empty();
    }
}
