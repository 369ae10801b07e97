package rasterfit.app.contract;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.media.Discriminator;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * Gives choices the shape that the JSON has. The generator describes a choice by its Java type as well, whose members are
 * not in the JSON, and each kind as an extension of the choice, which then contains itself.
 */
@Component
@Order(0)
@SuppressWarnings({"rawtypes", "unchecked"}) // the model of the contract is made of raw schemas
final class SchemaShapes implements OpenApiCustomizer {
    @Override
    public void customise(OpenAPI contract) {
        if (contract.getComponents() == null || contract.getComponents().getSchemas() == null) {
            return;
        }
        Map<String, Schema> schemas = contract.getComponents().getSchemas();
        schemas.values().stream().filter(schema -> schema.getOneOf() != null).forEach(choice -> {
            Discriminator discriminator = choice.getDiscriminator();
            if (discriminator != null && discriminator.getMapping() != null) {
                discriminator
                        .getMapping()
                        .forEach((kind, reference) ->
                                flatten(schemas.get(name(reference)), discriminator.getPropertyName(), kind));
            }
            choice.setProperties(null);
            choice.setRequired(null);
            choice.setType(null);
            choice.setTypes(null);
        });
    }

    private static String name(String reference) {
        return reference.substring(reference.lastIndexOf('/') + 1);
    }

    /** One kind with all of its members, the one that names the kind among them. */
    private static void flatten(@Nullable Schema kind, String discriminator, String value) {
        if (kind == null) {
            return;
        }
        Map<String, Schema> members = new LinkedHashMap<>();
        StringSchema name = new StringSchema();
        name.setEnum(List.of(value));
        members.put(discriminator, name);
        if (kind.getAllOf() != null) {
            for (Object part : kind.getAllOf()) {
                addAll(members, ((Schema<?>) part).getProperties());
            }
        }
        addAll(members, kind.getProperties());
        List<String> required = new ArrayList<>(List.of(discriminator));
        if (kind.getRequired() != null) {
            required.addAll(kind.getRequired());
        }
        kind.setAllOf(null);
        kind.setProperties(members);
        kind.setRequired(required);
        kind.addType("object");
    }

    private static void addAll(Map<String, Schema> members, @Nullable Map<String, Schema> more) {
        if (more != null) {
            members.putAll(more);
        }
    }
}
