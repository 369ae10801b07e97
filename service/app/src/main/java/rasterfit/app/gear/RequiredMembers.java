package rasterfit.app.gear;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Finds the required members that a request leaves out, in one walk over its records. A member is required unless its
 * type is {@link Nullable}; the same mark tells the published contract, so that the two cannot differ.
 */
public final class RequiredMembers {
    /** Looked up once for each type: a walk over thousands of records would spend most of its time on that. */
    private static final ClassValue<List<Member>> MEMBERS = new ClassValue<>() {
        @Override
        protected List<Member> computeValue(Class<?> type) {
            return Member.of(type);
        }
    };

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
            for (Member member : MEMBERS.get(value.getClass())) {
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

    private record Member(String name, boolean isRequired, Method accessor) {
        static List<Member> of(Class<?> type) {
            return Stream.of(type.getRecordComponents()).map(Member::of).toList();
        }

        private static Member of(RecordComponent component) {
            component.getAccessor().setAccessible(true);
            return new Member(
                    WrittenName.of(component), RequiredMembers.isRequired(component), component.getAccessor());
        }

        @Nullable
        Object of(Object owner) {
            try {
                return accessor.invoke(owner);
            } catch (IllegalAccessException | InvocationTargetException impossible) {
                throw new IllegalStateException("the accessor of a record component failed: " + accessor, impossible);
            }
        }
    }
}
