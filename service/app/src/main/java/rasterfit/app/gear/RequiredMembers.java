package rasterfit.app.gear;

import java.lang.reflect.RecordComponent;
import java.util.Collection;
import org.jspecify.annotations.Nullable;

/**
 * Finds the required members that a request leaves out, in one walk over its records. A member is required unless its
 * type is {@link Nullable}; the same mark tells the published contract, so that the two cannot differ.
 */
public final class RequiredMembers {
    private RequiredMembers() {}

    /** Reports all absent members as one problem (400). */
    public static void check(Record body) {
        Faults faults = new Faults();
        check(body, Place.root(faults));
        faults.throwIfAny();
    }

    /** Whether a member has to be there. */
    public static boolean isRequired(RecordComponent component) {
        return !component.getAnnotatedType().isAnnotationPresent(Nullable.class);
    }

    private static void check(@Nullable Object value, Place place) {
        if (value instanceof Record) {
            for (BodyMember member : BodyMember.ofRecord(value)) {
                Object of = member.of(value);
                Place at = value instanceof Alternatives ? place : place.member(member.name());
                if (of != null) {
                    check(of, at);
                } else if (member.isRequired()) {
                    at.missing("This member is required.");
                }
            }
        } else if (value instanceof Collection<?> elements) {
            int index = 0;
            for (Object element : elements) {
                check(element, place.element(index++));
            }
        }
    }
}
