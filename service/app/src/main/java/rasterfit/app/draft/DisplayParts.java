package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.gear.Range;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Estimate;

/** What is the same for every display. */
public final class DisplayParts {
    static final Ask COLUMNS = Ask.count("columns", "How many pixels is the panel wide?", "pixels", Range.PIXELS);
    static final Ask ROWS = Ask.count("rows", "How many pixels is the panel high?", "pixels", Range.PIXELS);
    static final Ask LAG = Ask.number(
            "lagMs",
            "How long does the panel take to show the top of the picture, if you know? That of its class if absent.",
            "ms",
            Range.of("0", "1000", "ms"));

    private DisplayParts() {}

    static void grid(Answers answers, Part item) {
        Part panel = item.object("panel");
        panel.set("kind", "GRID");
        Part pixels = panel.object("pixels");
        pixels.answer("columns", answers.of(COLUMNS));
        pixels.answer("rows", answers.of(ROWS));
        leaveFilter(panel);
    }

    /** How a panel resamples is in no description. */
    public static void leaveFilter(Part panel) {
        panel.leave("filter", Assumptions.PANEL_FILTER, "How the panel resamples is not known.");
    }

    /** The delay as it was answered, or else that of the class. */
    static void lag(Part input, Answer lag, DisplayClass kind, boolean lowDelay) {
        if (lag.isGiven()) {
            input.element("lag").answer("ms", lag);
        } else {
            leaveLag(input, Assumptions.displayLagMs(kind, lowDelay, false));
        }
    }

    private static void leaveLag(Part input, Estimate taken) {
        input.leave(
                "lag", taken, "Its delay in ms is not known; standard definition and interlaced rasters take longer.");
    }

    /** What no EDID tells of an input either. */
    static void leaveSettings(Part input, DisplayClass kind, Estimate resyncMs) {
        List<AspectControl> controls = Assumptions.aspectControls(kind == DisplayClass.TUBE);
        input.leave("aspectControls", controls, "What can be set in its menu is not known.");
        input.leave(
                "overscanPercent",
                Assumptions.overscanPercent(kind, false),
                "What it hides at each edge is not known; of high definition, and of a tube in any case.");
        input.leave("resyncMs", resyncMs, "How long it takes to follow a new raster is not known.");
    }

    /** What is the same for every analog input. */
    public static void leaveAnalog(Part input) {
        AnalogInputs.leaveRest(input);
    }

    /** The settings and the delay of an input of a grid. */
    public static void leaveSettingsAndLag(Part input, DisplayClass kind, boolean isAnalog) {
        leaveSettings(
                input, kind, isAnalog ? Assumptions.ANALOG_DISPLAY_RESYNC_MS : Assumptions.DIGITAL_DISPLAY_RESYNC_MS);
        leaveLag(input, Assumptions.displayLagMs(kind, false, false));
    }
}
