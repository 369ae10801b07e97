package rasterfit.app.gear;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One member of a body, for walks over whole documents.
 *
 * @param name as it is written
 */
record BodyMember(String name, boolean isRequired, Method accessor) {
    /** Looked up once for each type: a walk over thousands of records would spend most of its time on that. */
    private static final ClassValue<List<BodyMember>> MEMBERS = new ClassValue<>() {
        @Override
        protected List<BodyMember> computeValue(Class<?> type) {
            return Stream.of(type.getRecordComponents()).map(BodyMember::of).toList();
        }
    };

    /** Those of a record. */
    static List<BodyMember> ofRecord(Object body) {
        return MEMBERS.get(body.getClass());
    }

    private static BodyMember of(RecordComponent component) {
        component.getAccessor().setAccessible(true);
        return new BodyMember(
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
