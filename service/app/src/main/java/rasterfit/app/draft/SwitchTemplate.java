package rasterfit.app.draft;

import java.util.List;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.gear.Range;

/** A device that joins several sources to one input. */
final class SwitchTemplate implements Template {
    private static final Ask CONNECTOR =
            Ask.connector("connector", "Which connector have its inputs?").asRequired();
    private static final Ask OUTPUT =
            Ask.connector("outputConnector", "Which connector has its output? That of the inputs if absent.");
    private static final Ask FORMATS = Ask.choices(
                    "formats", "Which signals does it pass?", List.of("RGB", "YPBPR", "YC", "CVBS", "TMDS"))
            .asRequired();
    private static final Ask PORTS = Ask.count(
                    "ports", "How many sources does it join?", "ports", Range.of("2", "64", "ports"))
            .asRequired();

    @Override
    public String id() {
        return "switch";
    }

    @Override
    public Kind kind() {
        return Kind.LINK;
    }

    @Override
    public String summary() {
        return "A device that joins several sources to one input and passes their signals as they are.";
    }

    @Override
    public List<Ask> asks() {
        return List.of(CONNECTOR, OUTPUT, FORMATS, PORTS);
    }

    @Override
    public void fill(Answers answers, Part item) {
        Answer connector = answers.of(CONNECTOR);
        Answer output = answers.of(OUTPUT);
        item.set("kind", "SWITCH");
        LinkParts.plug(item, "from", connector);
        if (output.isGiven()) {
            LinkParts.plug(item, "to", output);
        } else {
            item.object("to").assume("connector", connector.text(), "Most switches have one kind of connector.");
        }
        Answer formats = answers.of(FORMATS);
        for (String format : formats.texts()) {
            item.element("carries").answer("format", formats, format);
        }
        item.answer("ports", answers.of(PORTS));
        LinkParts.leaveRest(item);
    }
}
