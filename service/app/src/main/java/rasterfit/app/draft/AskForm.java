package rasterfit.app.draft;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.Range;
import rasterfit.gear.Connector;
import tools.jackson.databind.JsonNode;

/** Whether an answer is of the form that its question asks for; what is not is noted at its place. */
@FunctionalInterface
interface AskForm {
    /** Longest list of an answer (assumption). */
    int MOST_ELEMENTS = 64;

    Pattern AMOUNT_FORM = Pattern.compile("[0-9]{1,10}(\\.[0-9]{1,4})?");
    Pattern CURRENCY_FORM = Pattern.compile("[A-Z]{3}");

    AskForm TEXT = (at, answer) -> {
        if (isText(at, answer)) {
            at.text(answer.asString());
        }
    };

    AskForm SLUG = (at, answer) -> {
        if (isText(at, answer)) {
            at.slug(answer.asString());
        }
    };

    AskForm CONNECTOR = (at, answer) -> {
        if (isText(at, answer) && !Connector.isKnown(answer.asString())) {
            at.unknownValue("Unknown connector; known are " + String.join(", ", Connector.LISTED)
                    + ", or own:<slug> for one that only one maker's gear has.");
        }
    };

    AskForm AMOUNT = matching(AMOUNT_FORM, "An amount is a string with up to 10 digits and 4 decimals.");

    AskForm CURRENCY = matching(CURRENCY_FORM, "A currency is a code of ISO 4217, such as EUR.");

    AskForm TIMING = (at, answer) -> {
        if (isText(at, answer)) {
            GearReader.numberedTiming(at, answer.asString());
        }
    };

    void check(Place at, JsonNode answer);

    static AskForm choice(List<String> allowed) {
        return (at, answer) -> {
            if (isText(at, answer) && !allowed.contains(answer.asString())) {
                at.unknownValue("Known values: " + String.join(", ", allowed) + ".");
            }
        };
    }

    static AskForm count(Range range) {
        return (at, answer) -> {
            if (isNumber(at, answer)) {
                at.count(answer.decimalValue(), range);
            }
        };
    }

    static AskForm number(Range range) {
        return (at, answer) -> {
            if (isNumber(at, answer)) {
                at.number(answer.decimalValue(), range);
            }
        };
    }

    static AskForm exact(Range range) {
        return (at, answer) -> {
            if (isText(at, answer)) {
                at.exact(answer.asString(), range);
            }
        };
    }

    /** One or more elements of a form, none twice. */
    static AskForm listOf(AskForm form) {
        return (at, answer) -> {
            if (!answer.isArray()) {
                at.wrongForm("Expected a list.");
                return;
            }
            if (answer.isEmpty() || answer.size() > MOST_ELEMENTS) {
                at.outOfRange("From 1 to " + MOST_ELEMENTS + " elements are allowed.", "1.." + MOST_ELEMENTS);
                return;
            }
            Set<JsonNode> seen = new HashSet<>();
            for (int i = 0; i < answer.size(); i++) {
                form.check(at.element(i), answer.get(i));
                if (!seen.add(answer.get(i))) {
                    at.element(i).invalid("It is named before.");
                }
            }
        };
    }

    private static AskForm matching(Pattern pattern, String message) {
        return (at, answer) -> {
            if (isText(at, answer) && !pattern.matcher(answer.asString()).matches()) {
                at.wrongForm(message);
            }
        };
    }

    private static boolean isText(Place at, JsonNode answer) {
        if (!answer.isString()) {
            at.wrongForm("Expected a string.");
        }
        return answer.isString();
    }

    private static boolean isNumber(Place at, JsonNode answer) {
        if (!answer.isNumber()) {
            at.wrongForm("Expected a number.");
        }
        return answer.isNumber();
    }
}
