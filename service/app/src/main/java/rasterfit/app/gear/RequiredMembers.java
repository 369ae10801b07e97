package rasterfit.app.gear;

import java.lang.reflect.InvocationTargetException;
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
            for (RecordComponent component : value.getClass().getRecordComponents()) {
                Object member = valueOf(component, value);
                Place at = value instanceof Alternatives ? place : place.member(WrittenName.of(component));
                if (member != null) {
                    check(member, at);
                } else if (isRequired(component)) {
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

    private static @Nullable Object valueOf(RecordComponent component, Object owner) {
        try {
            component.getAccessor().setAccessible(true);
            return component.getAccessor().invoke(owner);
        } catch (IllegalAccessException | InvocationTargetException impossible) {
            throw new IllegalStateException("the accessor of a record component failed: " + component, impossible);
        }
    }
}
