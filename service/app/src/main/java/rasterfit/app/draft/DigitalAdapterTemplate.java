package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;

/** A small adapter with a digital output and nothing to set. */
final class DigitalAdapterTemplate implements Template {
    private static final Ask FORMAT = CommonAsks.format("inputFormat", "Which signal does that input take?")
            .asRequired();
    private static final Ask LINES = Ask.choice(
                    "lines", "Does it send each line as it is, or twice?", List.of("KEPT", "DOUBLED"))
            .or("DOUBLED", "Few digital displays list rasters of 240 or 288 lines.", "assumption");

    private static final String CLASS =
            "Decoders for standard definition sample at 13.5 MHz, 858 or 864 times a line (ITU-R BT.601), or at twice that.";
    private static final String RATES = "Made for the rasters of the two broadcast families.";

    @Override
    public String id() {
        return "digital-adapter";
    }

    @Override
    public Kind kind() {
        return Kind.CONVERTER;
    }

    @Override
    public String summary() {
        return "A small adapter that turns one analog signal into a digital one, with nothing to set.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(CommonAsks.INPUT_CONNECTOR, FORMAT, LINES, CommonAsks.OUTPUT_CONNECTOR);
    }

    @Override
    public void fill(Answers answers, Part item) {
        Answer lines = answers.of(LINES);
        Answer format = answers.of(FORMAT);
        Part input = item.element("inputs", "in");
        input.answer("connector", answers.of(CommonAsks.INPUT_CONNECTOR));
        AnalogInputs.accept(input, format, List.of(format.text()));
        AnalogInputs.standardDefinition(input, RATES);
        AnalogInputs.leaveRest(input);
        ConverterParts.digitiser(input, "27000000", List.of(858, 864), CLASS);
        boolean isDoubled = lines.text().equals("DOUBLED");
        Part processing = item.element("processing", isDoubled ? "double" : "pass");
        processing.answer("kind", lines, isDoubled ? "LINE_REPEAT" : "FORMAT_ONLY");
        if (isDoubled) {
            ConverterParts.repeat(processing, lines, List.of(2));
        }
        ConverterParts.leaveDelay(processing);
        Part output = ConverterParts.output(answers, item);
        if (!isDoubled) {
            output.assume(
                    "repetition",
                    true,
                    "A link carries at least 25 MHz, so that pixels at 13.5 MHz are sent twice; HDMI 1.3a §6.4.");
        }
        item.assume("settingsToTune", 0, "There is nothing to set.");
        ConverterParts.leaveResync(item);
    }
}
