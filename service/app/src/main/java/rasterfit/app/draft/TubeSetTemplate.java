package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.gear.Assumptions;
import rasterfit.gear.DisplayClass;

/** A television set with a tube. */
final class TubeSetTemplate implements Template {
    private static final Ask CONNECTOR =
            Ask.connector("connector", "Which connector shall be used?").asRequired();
    private static final Ask FORMATS =
            CommonAsks.formats("formats", "Which signals does it take there?").asRequired();
    private static final Ask STANDARDS = Ask.choice(
                    "standards", "Which line standards does it show?", List.of("L525_60", "L625_50", "BOTH"))
            .or("BOTH", "Sets of 625-line markets show both from the nineties on; common practice.", "common practice");
    private static final Ask ASPECT = Ask.choice("aspect", "Which shape has the tube?", List.of("4:3", "16:9"))
            .or("4:3", "Most tubes have it.", "common practice");

    private static final String DEFLECTION =
            "The deflection of 15 kHz sets holds about 2 % of the line rate either way; from memory.";
    private static final String FIELD = "The vertical deflection holds a few hertz either way; from memory.";

    @Override
    public String id() {
        return "tube-set";
    }

    @Override
    public Kind kind() {
        return Kind.DISPLAY;
    }

    @Override
    public String summary() {
        return "A television set with a tube, for rasters of 15 kHz.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(CONNECTOR, FORMATS, STANDARDS, ASPECT);
    }

    @Override
    public void fill(Answers answers, Part item) {
        String standards = answers.of(STANDARDS).text();
        item.set("class", DisplayClass.TUBE);
        Part panel = item.object("panel");
        panel.set("kind", "TUBE");
        panel.answer("aspect", answers.of(ASPECT));
        Part input = item.element("inputs", "in");
        input.answer("connector", answers.of(CONNECTOR));
        AnalogInputs.accept(input, answers.of(FORMATS));
        // 2 % around 15 625 Hz and 15 734.27 Hz, inwards to whole hertz.
        Part line = input.object("lineRateHz");
        line.assume("min", standards.equals("L525_60") ? "15420" : "15313", DEFLECTION);
        line.assume("max", standards.equals("L625_50") ? "15937" : "16048", DEFLECTION);
        Part field = input.object("fieldRateHz");
        field.assume("min", standards.equals("L525_60") ? "57" : "47", FIELD);
        field.assume("max", standards.equals("L625_50") ? "53" : "63", FIELD);
        AnalogInputs.leaveRest(input);
        DisplayParts.leaveSettings(input, DisplayClass.TUBE, Assumptions.TUBE_RESYNC_MS);
        input.leave("lag", Assumptions.displayLagMs(DisplayClass.TUBE, false, false), "A tube shows what arrives.");
    }
}
