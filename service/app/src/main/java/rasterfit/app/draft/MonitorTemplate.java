package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.gear.Range;
import rasterfit.edid.EdidReader;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.SyncKind;
import rasterfit.timing.Border;
import rasterfit.timing.Dmt;
import rasterfit.timing.RasterTiming;
import rasterfit.timing.Scan;

/** A computer monitor, without its EDID. */
final class MonitorTemplate implements Template {
    private static final Ask COLUMNS = DisplayParts.COLUMNS.asRequired();
    private static final Ask ROWS = DisplayParts.ROWS.asRequired();
    private static final Ask CONNECTOR = Ask.choice(
                    "connector", "Which connector shall be used?", List.of("HDMI", "DVI", "DISPLAYPORT", "VGA"))
            .asRequired();
    private static final String RANGES = "A range that many monitors print in their manuals; from memory.";
    private static final Ask LEAST_LINE = rate("leastLineRateHz", "What is the least line rate?", Range.LINE_RATE)
            .or("30000", RANGES, "from memory");
    private static final Ask GREATEST_LINE =
            rate("greatestLineRateHz", "What is the greatest?", Range.LINE_RATE).or("83000", RANGES, "from memory");
    private static final Ask LEAST_FIELD = rate("leastFieldRateHz", "What is the least field rate?", Range.FIELD_RATE)
            .or("56", RANGES, "from memory");
    private static final Ask GREATEST_FIELD = rate("greatestFieldRateHz", "What is the greatest?", Range.FIELD_RATE)
            .or("76", RANGES, "from memory");

    private static final String TIMINGS =
            "Monitors take the timings of VESA DMT at 60 Hz up to their own size; common practice. Its EDID would tell:"
                    + " POST /v1/displays/drafts.";

    private static Ask rate(String name, String question, Range range) {
        return Ask.exact(name, question, "Hz", range);
    }

    @Override
    public String id() {
        return "monitor";
    }

    @Override
    public Kind kind() {
        return Kind.DISPLAY;
    }

    @Override
    public String summary() {
        return "A flat computer monitor whose EDID is not at hand.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(
                COLUMNS, ROWS, CONNECTOR, LEAST_LINE, GREATEST_LINE, LEAST_FIELD, GREATEST_FIELD, DisplayParts.LAG);
    }

    @Override
    public void fill(Answers answers, Part item) {
        Answer connector = answers.of(CONNECTOR);
        boolean isAnalog = connector.text().equals("VGA");
        item.set("class", DisplayClass.MONITOR);
        DisplayParts.grid(answers, item);
        Part input = item.element("inputs", isAnalog ? "analog" : "digital");
        input.answer("connector", connector);
        range(input.object("lineRateHz"), answers.of(LEAST_LINE), answers.of(GREATEST_LINE));
        range(input.object("fieldRateHz"), answers.of(LEAST_FIELD), answers.of(GREATEST_FIELD));
        if (isAnalog) {
            Part accepted = input.element("accepts");
            accepted.answer("format", connector, "RGB");
            accepted.assume(
                    "syncs", List.of(SyncKind.SEPARATE_SYNC), "What this connector is made for; E-EDID table 3.11.");
            AnalogInputs.leaveRest(input);
        } else {
            input.answer("link", connector, connector.text().equals("HDMI") ? "HDMI" : "DVI");
            input.assume(
                    "timings",
                    timings(answers.of(COLUMNS).count(), answers.of(ROWS).count()),
                    TIMINGS);
            input.leave(
                    "maxTmdsClockHz",
                    EdidReader.PLAIN_TMDS_CLOCK,
                    "What every such link carries at least; HDMI 1.3a §8.3.");
            input.leave("continuous", false, "Nothing promises timings between those listed.");
        }
        DisplayParts.leaveSettings(
                input,
                DisplayClass.MONITOR,
                isAnalog ? Assumptions.ANALOG_DISPLAY_RESYNC_MS : Assumptions.DIGITAL_DISPLAY_RESYNC_MS);
        DisplayParts.lag(input, answers.of(DisplayParts.LAG), DisplayClass.MONITOR, false);
    }

    private static void range(Part range, Answer least, Answer greatest) {
        range.answer("min", least);
        range.answer("max", greatest);
    }

    private static List<String> timings(int columns, int rows) {
        List<String> labels = Dmt.all().stream()
                .filter(monitor -> monitor.border().equals(Border.NONE))
                .filter(monitor -> fits(monitor.timing(), columns, rows))
                .map(monitor -> String.format("dmt:0x%02x", monitor.id()))
                .toList();
        return labels.isEmpty() ? List.of("dmt:0x04") : labels;
    }

    private static boolean fits(RasterTiming timing, int columns, int rows) {
        return timing.scan() == Scan.PROGRESSIVE
                && timing.horizontalActive() <= columns
                && timing.verticalActive() <= rows
                && Math.round(timing.fieldRate().hz().toDouble()) == 60;
    }
}
