package rasterfit.app.draft;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import rasterfit.app.gear.Place;
import tools.jackson.databind.JsonNode;

/** The answers to the questions of one template, each of the form that was asked for. */
final class Answers {
    private final Map<String, Answer> byName = new LinkedHashMap<>();

    private Answers() {}

    /** Notes every fault at its place; what was read is of use only if there is none. */
    static Answers read(Place root, List<Ask> asks, DraftRequestBody body) {
        Place at = root.member("answers");
        Set<String> measured = measured(root.member("measured"), asks, body);
        Answers answers = new Answers();
        Set<String> known = new LinkedHashSet<>();
        for (Ask ask : asks) {
            known.add(ask.name());
            JsonNode given = body.answers().get(ask.name());
            if (given != null) {
                ask.form().check(at.member(ask.name()), given);
            } else if (ask.required()) {
                at.member(ask.name()).missing("This answer is required.");
            }
            answers.byName.put(ask.name(), new Answer(ask, given, measured.contains(ask.name())));
        }
        body.answers().propertyNames().stream()
                .filter(name -> !known.contains(name))
                .forEach(name -> at.member(name)
                        .unknownMember(
                                "This template does not ask for it; it asks for " + String.join(", ", known) + "."));
        return answers;
    }

    private static Set<String> measured(Place at, List<Ask> asks, DraftRequestBody body) {
        return new HashSet<>(at.each(body.measured(), 0, asks.size(), (place, name) -> {
            if (!body.answers().has(name)) {
                place.invalid("Only what is answered can be measured.");
            }
            return name;
        }));
    }

    Answer of(Ask ask) {
        return Objects.requireNonNull(byName.get(ask.name()), ask.name());
    }

    /** Notes the one of two answers that is missing where the other is given. */
    static void together(Place at, DraftRequestBody body, Ask one, Ask other) {
        goesWith(at, body, one, other);
        goesWith(at, body, other, one);
    }

    private static void goesWith(Place at, DraftRequestBody body, Ask given, Ask partner) {
        if (body.answers().has(given.name()) && !body.answers().has(partner.name())) {
            at.member(partner.name()).missing("It goes with " + given.name() + ".");
        }
    }
}
