package rasterfit.app.contract;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JavaType;
import io.swagger.v3.core.converter.AnnotatedType;
import io.swagger.v3.core.converter.ModelConverter;
import io.swagger.v3.core.converter.ModelConverterContext;
import io.swagger.v3.core.util.Json;
import io.swagger.v3.oas.models.media.Schema;
import java.lang.reflect.RecordComponent;
import java.util.Collection;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.app.gear.WrittenName;

/**
 * Marks the members of our records as required unless their type is nullable. Requests are checked by the same mark, and
 * answers leave null members out, so the contract says what the JSON really holds.
 */
@Component
final class RecordSchemas implements ModelConverter {
    private static final String OURS = "rasterfit.app.";

    @Override
    public @Nullable Schema<?> resolve(
            AnnotatedType type, ModelConverterContext context, Iterator<ModelConverter> chain) {
        Schema<?> resolved = chain.hasNext() ? chain.next().resolve(type, context, chain) : null;
        JavaType java = Json.mapper().constructType(type.getType());
        if (resolved != null && java != null && java.getRawClass().isRecord() && isOurs(java.getRawClass())) {
            Schema<?> model = modelOf(resolved, context);
            if (model != null && model.getProperties() != null) {
                model.setRequired(required(java.getRawClass(), model));
            }
        }
        return resolved;
    }

    private static boolean isOurs(Class<?> type) {
        return type.getName().startsWith(OURS);
    }

    /** The schema itself, or the one that a reference leads to. */
    private static @Nullable Schema<?> modelOf(Schema<?> resolved, ModelConverterContext context) {
        if (resolved.get$ref() == null) {
            return resolved;
        }
        String reference = resolved.get$ref();
        return context.getDefinedModels().get(reference.substring(reference.lastIndexOf('/') + 1));
    }

    private static @Nullable List<String> required(Class<?> type, Schema<?> model) {
        List<String> names = Stream.of(type.getRecordComponents())
                .filter(component -> isRequired(type, component))
                .map(WrittenName::of)
                .filter(name -> model.getProperties().containsKey(name))
                .toList();
        return names.isEmpty() ? null : names;
    }

    private static boolean isRequired(Class<?> type, RecordComponent component) {
        JsonInclude inclusion = type.getAnnotation(JsonInclude.class);
        boolean leavesOutEmpty = inclusion != null && inclusion.value() == JsonInclude.Include.NON_EMPTY;
        boolean canBeEmpty = leavesOutEmpty && Collection.class.isAssignableFrom(component.getType());
        return RequiredMembers.isRequired(component) && !canBeEmpty;
    }
}
