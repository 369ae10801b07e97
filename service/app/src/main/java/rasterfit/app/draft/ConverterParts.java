package rasterfit.app.draft;

import java.util.List;
import rasterfit.edid.EdidReader;
import rasterfit.gear.Assumptions;
import rasterfit.gear.LinkKind;

/** What is the same for every converter. */
final class ConverterParts {
    private static final String DELAY = "The delay of its electronics is not known.";

    private ConverterParts() {}

    /** @param samples an object with min and max, or a list */
    static void digitiser(Part input, String maxSampleRateHz, Object samples, String reason) {
        Part digitiser = input.object("digitiser");
        digitiser.assume("maxSampleRateHz", maxSampleRateHz, reason);
        digitiser.assume("samplesPerLine", samples, reason);
        digitiser.leave("clockJitterNs", Assumptions.DIGITISER_JITTER_NS, "Data sheets seldom tell it.");
    }

    static Part output(Answers answers, Part item) {
        Answer connector = answers.of(CommonAsks.OUTPUT_CONNECTOR);
        Part output = item.element("outputs", "out");
        output.answer("connector", connector);
        output.answer("link", connector, LinkKind.valueOf(connector.text()));
        output.leave(
                "maxTmdsClockHz",
                EdidReader.PLAIN_TMDS_CLOCK,
                "What every such link carries at least; HDMI 1.3a §8.3.");
        return output;
    }

    static void leaveDelay(Part processing) {
        processing.leave("pipelineUs", Assumptions.PIPELINE_US, DELAY);
    }

    static void leaveResync(Part item) {
        item.leave(
                "resyncMs", Assumptions.CONVERTER_RESYNC_MS, "How long it takes to follow a new raster is not known.");
    }

    static void leaveEffort(Part item) {
        item.leave("settingsToTune", Assumptions.SETTINGS_TO_TUNE, "How much there is to set is not known.");
    }

    /** Lines of both families, each sent so many times. */
    static void repeat(Part processing, Answer answer, List<Integer> multiples) {
        processing.answer(
                "lines", answer, List.of(counts("L525_60", 240, multiples), counts("L625_50", 288, multiples)));
        processing.leave(
                "latestStartLines",
                Assumptions.LATEST_START_LINES,
                "When the first copy of a line begins at the latest is not known.");
        processing.leave(
                "interlaced", Assumptions.INTERLACED_REPEAT, "What it makes of interlaced rasters is not known.");
    }

    private static Object counts(String standard, int lines, List<Integer> multiples) {
        List<Integer> to =
                multiples.stream().sorted().map(times -> times * lines).toList();
        return DraftValue.object("lineStandard", standard, "from", lines, "to", to);
    }
}
