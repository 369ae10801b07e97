package rasterfit.app.gear;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.lang.reflect.RecordComponent;

/** The JSON name of a record component: its own name unless it is renamed because Java reserves the word. */
public final class WrittenName {
    private WrittenName() {}

    public static String of(RecordComponent component) {
        JsonProperty renamed = component.getAccessor().getAnnotation(JsonProperty.class);
        return renamed == null ? component.getName() : renamed.value();
    }
}
