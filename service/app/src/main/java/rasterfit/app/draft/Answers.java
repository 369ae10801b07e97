package rasterfit.app.draft;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.Place;
import rasterfit.gear.Basis;
import tools.jackson.databind.JsonNode;

/** The answers to the questions of one template, each of the form that was asked for. */
final class Answers {
    private final Map<String, Answer> byName = new LinkedHashMap<>();

    private Answers() {}

    /** Notes every fault at its place; what was read is of use only if there is none. */
    static Answers read(Place root, List<Ask> asks, DraftRequestBody body) {
        Place at = root.member("answers");
        Map<String, Basis> bases = bases(root, asks, body);
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
            answers.byName.put(ask.name(), new Answer(ask, given, bases.getOrDefault(ask.name(), Basis.DECLARED)));
        }
        body.answers().propertyNames().stream()
                .filter(name -> !known.contains(name))
                .forEach(name -> at.member(name)
                        .unknownMember(
                                "This template does not ask for it; it asks for " + String.join(", ", known) + "."));
        return answers;
    }

    /** What is said to be measured or published, by the name of the answer. */
    private static Map<String, Basis> bases(Place root, List<Ask> asks, DraftRequestBody body) {
        Map<String, Basis> bases = new HashMap<>();
        note(bases, Basis.MEASURED, root.member("measured"), asks, body, body.measured());
        note(bases, Basis.PUBLISHED, root.member("published"), asks, body, body.published());
        return bases;
    }

    private static void note(
            Map<String, Basis> bases,
            Basis basis,
            Place at,
            List<Ask> asks,
            DraftRequestBody body,
            @Nullable List<String> names) {
        at.each(names, 0, asks.size(), (place, name) -> {
            String stated = basis.name().toLowerCase(Locale.ROOT);
            if (!body.answers().has(name)) {
                place.invalid("Only what is answered can be " + stated + ".");
            }
            Basis other = bases.putIfAbsent(name, basis);
            if (other != null && other != basis) {
                place.invalid("An answer that is " + other.name().toLowerCase(Locale.ROOT) + " cannot be " + stated
                        + " as well.");
            }
            return name;
        });
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
