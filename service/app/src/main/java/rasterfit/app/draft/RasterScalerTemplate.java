package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.gear.Assumptions;
import rasterfit.gear.ScaleAxis;

/** A device that draws the picture into another raster. */
final class RasterScalerTemplate implements Template {
    private static final Ask TIMINGS = Ask.timings(
                    "outputTimings", "Which timings does it send? Such as vic:16 of CTA-861 or dmt:0x52 of VESA DMT.")
            .or(
                    List.of("vic:4", "vic:16"),
                    "720 and 1080 lines at 60 Hz, which most such devices offer.",
                    "assumption");
    private static final Ask RATE = Ask.choice(
                    "fieldRate",
                    "Does its output follow the source, or run at a rate of its own?",
                    List.of("FOLLOWS_SOURCE", "OWN_RATE"))
            .or("OWN_RATE", "Ordinary scalers store fields and send them at the rate of the timing.", "assumption");
    private static final Ask FACTORS = Ask.choice(
                    "factors", "Does it scale by whole factors alone, or by any?", List.of("WHOLE", "ANY"))
            .or(ScaleAxis.Factors.ANY, "Ordinary scalers fill the raster.", "common practice");

    private static final String SAMPLING =
            "Such devices sample over a wide range of counts, with digitisers of 80 MHz and more; data-sheet class, from"
                    + " memory.";
    private static final String TAPS = "The least filter that interpolates: between two neighbours.";
    private static final String PULL = "60.0985 Hz, of an ordinary raster of 262 lines, lies 2643 ppm above 59.94 Hz;"
            + " a device that follows sources has to reach it, with room.";

    @Override
    public String id() {
        return "raster-scaler";
    }

    @Override
    public Kind kind() {
        return Kind.CONVERTER;
    }

    @Override
    public String summary() {
        return "A device that stores the picture of an analog signal and draws it into a raster for modern displays.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(
                CommonAsks.INPUT_CONNECTOR,
                CommonAsks.INPUT_FORMATS,
                TIMINGS,
                RATE,
                FACTORS,
                CommonAsks.OUTPUT_CONNECTOR);
    }

    @Override
    public void fill(Answers answers, Part item) {
        Part input = item.element("inputs", "in");
        input.answer("connector", answers.of(CommonAsks.INPUT_CONNECTOR));
        AnalogInputs.accept(input, answers.of(CommonAsks.INPUT_FORMATS));
        AnalogInputs.leaveRest(input);
        ConverterParts.digitiser(input, "80000000", DraftValue.object("min", 640, "max", 2047), SAMPLING);
        Part scale = item.element("processing", "scale");
        scale.set("kind", "RASTER_SCALE");
        scale.answer("timings", answers.of(TIMINGS));
        axis(scale.object("vertical"), answers.of(FACTORS), "maxCropLines");
        axis(scale.object("horizontal"), answers.of(FACTORS), "maxCropDots");
        Part deinterlacer = scale.element("deinterlacers");
        deinterlacer.assume("kind", "MOTION_ADAPTIVE", "Most scalers choose by motion; common practice.");
        deinterlacer.leave(
                "addedFields", Assumptions.MOTION_ADAPTIVE_FIELDS, "How many fields it waits for is not known.");
        lock(scale.element("rateLocks"), answers.of(RATE));
        ConverterParts.leaveDelay(scale);
        ConverterParts.output(answers, item);
        ConverterParts.leaveResync(item);
        ConverterParts.leaveEffort(item);
    }

    private static void axis(Part axis, Answer factors, String crop) {
        axis.answer("factors", factors);
        axis.assume("taps", 2, TAPS);
        axis.leave(crop, 0, "Whether it can cut off a part of the picture is not known.");
    }

    private static void lock(Part lock, Answer rate) {
        if (rate.text().equals("FOLLOWS_SOURCE")) {
            lock.answer("kind", rate, "SOURCE_LOCKED");
            lock.assume("pullPpm", 6000, PULL);
        } else {
            lock.answer("kind", rate, "FREE_RUNNING");
            lock.leave("fieldStores", Assumptions.FIELD_STORES, "How many fields it stores is not known.");
        }
    }
}
