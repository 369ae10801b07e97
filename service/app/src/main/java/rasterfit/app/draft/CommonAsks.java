package rasterfit.app.draft;

import java.util.ArrayList;
import java.util.List;
import rasterfit.gear.Format;

/** Questions that templates share. */
final class CommonAsks {
    static final Ask NAME = Ask.text("name", "What is it called?").asRequired();
    static final Ask ID = Ask.id("id", "Under which id shall it go? Made from the name if absent.");
    static final Ask PRICE = Ask.amount("price", "What does it cost?");
    static final Ask CURRENCY = Ask.currency("currency", "In which currency?");

    private static final List<String> ANALOG =
            List.of(Format.RGB.name(), Format.YPBPR.name(), Format.YC.name(), Format.CVBS.name());

    static final Ask INPUT_CONNECTOR =
            Ask.connector("inputConnector", "Which connector has its input?").asRequired();
    static final Ask INPUT_FORMATS = Ask.choices("inputFormats", "Which signals does that input take?", ANALOG)
            .asRequired();
    static final Ask OUTPUT_CONNECTOR = Ask.choice(
                    "outputConnector", "Which connector has its output?", List.of("HDMI", "DVI"))
            .or("HDMI", "Most such devices made for televisions have it.", "common practice");

    private CommonAsks() {}

    /** All questions of a template, in the order in which they are asked. */
    static List<Ask> of(Template template) {
        List<Ask> asks = new ArrayList<>(List.of(NAME, ID));
        asks.addAll(template.asks());
        asks.addAll(List.of(PRICE, CURRENCY));
        return List.copyOf(asks);
    }

    /** One analog format of those that can be asked for. */
    static Ask format(String name, String question) {
        return Ask.choice(name, question, ANALOG);
    }

    /** One or more of them. */
    static Ask formats(String name, String question) {
        return Ask.choices(name, question, ANALOG);
    }
}
