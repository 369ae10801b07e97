package rasterfit.app.gear;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Finds provenance that is said of nothing: a path that leads to no member of the body beside which it stands. An element of a
 * list goes by its id, or by its index from 0 where it has none.
 */
public final class ProvenancePaths {
    private static final String PROVENANCE = "provenance";

    private ProvenancePaths() {}

    /** Notes every path, in a body and in whatever it holds, that leads to nothing (422). */
    public static void check(Place at, Record body) {
        for (BodyMember member : BodyMember.ofRecord(body)) {
            Object value = member.of(body);
            Place place = body instanceof Alternatives ? at : at.member(member.name());
            if (value instanceof Record inner) {
                check(place, inner);
            } else if (value instanceof Collection<?> elements) {
                int index = 0;
                for (Object element : elements) {
                    Place of = place.element(index++);
                    if (element instanceof ProvenanceBody entry && member.name().equals(PROVENANCE)) {
                        checkEntry(of.member("of"), entry, body);
                    } else if (element instanceof Record inner) {
                        check(of, inner);
                    }
                }
            }
        }
    }

    private static void checkEntry(Place at, ProvenanceBody entry, Record body) {
        if (!leads(body, Provenance.steps(entry.of()))) {
            at.invalid("Nothing is there. A path has the names of members and the ids of elements, or the index of an"
                    + " element without an id, such as inputs/av/lineRateHz.");
        }
    }

    private static boolean leads(@Nullable Object value, List<String> steps) {
        if (value == null || steps.isEmpty()) {
            return value != null;
        }
        if (value instanceof Alternatives) {
            return members(value).anyMatch(member -> leads(member.of(value), steps));
        }
        String step = steps.get(0);
        List<String> rest = steps.subList(1, steps.size());
        if (value instanceof Record) {
            return (rest.isEmpty() && step.equals(typeName(value)))
                    || members(value)
                            .filter(member -> member.name().equals(step))
                            .anyMatch(member -> leads(member.of(value), rest));
        }
        if (value instanceof Collection<?> elements) {
            int index = 0;
            for (Object element : elements) {
                String id = id(element);
                if (step.equals(id == null ? Integer.toString(index) : id)) {
                    return leads(element, rest);
                }
                index++;
            }
        }
        return false;
    }

    private static Stream<BodyMember> members(Object of) {
        return BodyMember.ofRecord(of).stream();
    }

    private static @Nullable String id(@Nullable Object element) {
        return element instanceof Record
                ? members(element)
                        .filter(member -> member.name().equals("id"))
                        .map(member -> member.of(element))
                        .filter(Objects::nonNull)
                        .map(Object::toString)
                        .findFirst()
                        .orElse(null)
                : null;
    }

    /** The member that tells the kinds of a choice apart is no component of any. */
    private static @Nullable String typeName(Object value) {
        return Arrays.stream(value.getClass().getInterfaces())
                .map(choice -> choice.getAnnotation(JsonTypeInfo.class))
                .filter(Objects::nonNull)
                .map(JsonTypeInfo::property)
                .findFirst()
                .orElse(null);
    }
}
