package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.gear.Range;

/** A device that sends every line several times. */
final class LineRepeaterTemplate implements Template {
    private static final Ask MULTIPLES = Ask.counts(
                    "multiples",
                    "How many times can it send a line? 2 makes 480 lines of 240, 3 makes 720, and so on.",
                    "times",
                    Range.of("2", "16", "times"))
            .asRequired();

    private static final String CLASS =
            "Such devices sample over a wide range of counts, with graphics digitisers of 80 MHz and more; data-sheet"
                    + " class, from memory.";

    @Override
    public String id() {
        return "line-repeater";
    }

    @Override
    public Kind kind() {
        return Kind.CONVERTER;
    }

    @Override
    public String summary() {
        return "A device that sends every line of an analog signal several times, with hardly any delay.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(CommonAsks.INPUT_CONNECTOR, CommonAsks.INPUT_FORMATS, MULTIPLES, CommonAsks.OUTPUT_CONNECTOR);
    }

    @Override
    public void fill(Answers answers, Part item) {
        Answer multiples = answers.of(MULTIPLES);
        Part input = item.element("inputs", "in");
        input.answer("connector", answers.of(CommonAsks.INPUT_CONNECTOR));
        AnalogInputs.accept(input, answers.of(CommonAsks.INPUT_FORMATS));
        AnalogInputs.leaveRest(input);
        ConverterParts.digitiser(input, "80000000", DraftValue.object("min", 640, "max", 2047), CLASS);
        Part processing = item.element("processing", "repeat");
        processing.set("kind", "LINE_REPEAT");
        ConverterParts.repeat(processing, multiples, multiples.counts());
        ConverterParts.leaveDelay(processing);
        ConverterParts.output(answers, item);
        ConverterParts.leaveResync(item);
        ConverterParts.leaveEffort(item);
    }
}
