package rasterfit.app.draft;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * What is known on one question: what was answered, else its default, else nothing.
 *
 * @param given absent where nothing was answered
 * @param measured whether the answer was said to be measured
 */
record Answer(Ask ask, @Nullable JsonNode given, boolean measured) {

    boolean isGiven() {
        return given != null;
    }

    /** Given or by default. */
    boolean isKnown() {
        return given != null || ask.otherwise() != null;
    }

    /** @throws IllegalStateException if nothing is known */
    JsonNode value() {
        if (given != null) {
            return given;
        }
        AskDefault otherwise = ask.otherwise();
        if (otherwise == null) {
            throw new IllegalStateException("neither an answer nor a default for " + ask.name());
        }
        return otherwise.value();
    }

    String text() {
        return value().asString();
    }

    int count() {
        return value().asInt();
    }

    List<String> texts() {
        List<String> texts = new ArrayList<>();
        value().forEach(element -> texts.add(element.asString()));
        return texts;
    }

    List<Integer> counts() {
        List<Integer> counts = new ArrayList<>();
        value().forEach(element -> counts.add(element.asInt()));
        return counts;
    }
}
