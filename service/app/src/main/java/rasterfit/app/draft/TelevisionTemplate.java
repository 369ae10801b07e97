package rasterfit.app.draft;

import java.util.ArrayList;
import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.edid.EdidReader;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayClass;
import rasterfit.timing.Cta861;
import rasterfit.timing.VideoTiming;

/** A flat television, without its EDID. */
final class TelevisionTemplate implements Template {
    private static final Ask COLUMNS = DisplayParts.COLUMNS.or(1920, "The most common panel.", "assumption");
    private static final Ask ROWS = DisplayParts.ROWS.or(1080, "The most common panel.", "assumption");
    private static final Ask PRESET = Ask.choice(
            "preset",
            "Is its picture preset made for low delay? Not known if absent; then it is taken as ordinary.",
            List.of("LOW_DELAY", "ORDINARY"));

    /** 640 × 480, then 480, 576, 720 and 1080 lines of both families, interlaced and progressive. */
    private static final List<Integer> BROADCAST = List.of(1, 2, 3, 6, 7, 17, 18, 21, 22, 4, 19, 5, 20, 16, 31);

    private static final String TIMINGS = "Televisions take the timings of broadcast up to their own size; common"
            + " practice. Its EDID would tell: POST /v1/displays/drafts.";

    @Override
    public String id() {
        return "television";
    }

    @Override
    public Kind kind() {
        return Kind.DISPLAY;
    }

    @Override
    public String summary() {
        return "A flat television with a digital input whose EDID is not at hand.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(COLUMNS, ROWS, PRESET, DisplayParts.LAG);
    }

    @Override
    public void fill(Answers answers, Part item) {
        Answer preset = answers.of(PRESET);
        item.set("class", DisplayClass.TELEVISION);
        DisplayParts.grid(answers, item);
        Part input = item.element("inputs", "digital-1");
        input.assume("connector", "HDMI", "Flat televisions have it; common practice.");
        input.assume("link", "HDMI", "It goes with the connector.");
        input.assume(
                "timings", timings(answers.of(COLUMNS).count(), answers.of(ROWS).count()), TIMINGS);
        input.leave(
                "maxTmdsClockHz",
                EdidReader.PLAIN_TMDS_CLOCK,
                "What every such link carries at least; HDMI 1.3a §8.3.");
        input.leave("continuous", false, "Nothing promises timings between those listed.");
        input.answer("preset", preset);
        DisplayParts.leaveSettings(input, DisplayClass.TELEVISION, Assumptions.DIGITAL_DISPLAY_RESYNC_MS);
        boolean isLowDelay = preset.isKnown() && preset.text().equals("LOW_DELAY");
        DisplayParts.lag(input, answers.of(DisplayParts.LAG), DisplayClass.TELEVISION, isLowDelay);
    }

    private static List<String> timings(int columns, int rows) {
        List<String> labels = new ArrayList<>();
        for (int vic : BROADCAST) {
            VideoTiming timing = Cta861.find(vic).orElseThrow();
            boolean fits = timing.timing().horizontalActive() <= columns
                    && timing.timing().verticalActive() <= rows;
            // Panels of 768 rows take 1080 lines too (common practice).
            if (fits || rows >= 720) {
                labels.add("vic:" + vic);
            }
        }
        return labels.isEmpty() ? List.of("vic:1") : labels;
    }
}
