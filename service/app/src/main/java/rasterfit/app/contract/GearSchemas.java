package rasterfit.app.contract;

import io.swagger.v3.core.converter.ModelConverters;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.LinkBody;
import rasterfit.app.gear.SourceBody;

/**
 * Shows what the documents of the catalogue look like. They are handled as the text that they are, so the generator only sees
 * some object. No item has a member that its kind does not know, which is what tells the kinds apart.
 */
@Component
@Order(-1) // before the shapes of choices are mended
@SuppressWarnings("rawtypes") // the model of the contract is made of raw schemas
final class GearSchemas implements OpenApiCustomizer {
    private static final String JSON = "application/json";

    /** The name of the choice of kinds. */
    static final String GEAR = "GearBody";

    private static final List<Class<? extends Record>> KINDS =
            List.of(SourceBody.class, DisplayBody.class, ConverterBody.class, LinkBody.class);

    /** What an operation takes and gives, by its id. */
    private static final Map<String, Shape> SHAPES = Map.of(
            "listGear", new Shape(null, GearSchemas::page),
            "getGear", new Shape(null, GearSchemas::gear),
            "putGear", new Shape(GearSchemas::gear, GearSchemas::gear),
            "patchGear", new Shape(null, GearSchemas::gear),
            "getGearRevision", new Shape(null, GearSchemas::gear),
            "restoreGearRevision", new Shape(null, GearSchemas::gear),
            "importCatalogue", new Shape(GearSchemas::catalogue, null),
            "exportCatalogue", new Shape(null, GearSchemas::catalogue));

    /** Absent where the generator sees it well enough. */
    private record Shape(
            @Nullable Supplier<Schema> taken, @Nullable Supplier<Schema> given) {}

    @Override
    public void customise(OpenAPI contract) {
        Components components = contract.getComponents() == null ? new Components() : contract.getComponents();
        contract.setComponents(components);
        // All kinds at once, since every reading makes its schemas anew.
        Map<String, Schema> schemas = ModelConverters.getInstance(true).readAll(CatalogueBody.class);
        schemas.forEach(components::addSchemas);
        Stream.concat(KINDS.stream(), Stream.of(CatalogueBody.class))
                .forEach(type -> Objects.requireNonNull(schemas.get(type.getSimpleName()))
                        .setAdditionalProperties(false));
        Schema<?> choice = new Schema<>();
        KINDS.forEach(kind -> choice.addOneOfItem(reference(kind.getSimpleName())));
        components.addSchemas(GEAR, choice);
        contract.getPaths()
                .values()
                .forEach(path -> path.readOperations().forEach(operation -> {
                    Shape shape = SHAPES.get(String.valueOf(operation.getOperationId()));
                    if (shape != null) {
                        describe(operation, shape);
                    }
                }));
    }

    private static void describe(Operation operation, Shape shape) {
        if (shape.taken() != null) {
            set(operation.getRequestBody().getContent(), shape.taken());
        }
        Supplier<Schema> given = shape.given();
        if (given != null) {
            operation.getResponses().forEach((status, response) -> {
                if (status.startsWith("2")) {
                    set(response.getContent(), given);
                }
            });
        }
    }

    private static void set(@Nullable Content content, Supplier<Schema> schema) {
        MediaType json = content == null ? null : content.get(JSON);
        if (json != null) {
            json.setSchema(schema.get());
        }
    }

    private static Schema gear() {
        return reference(GEAR);
    }

    private static Schema catalogue() {
        return reference(CatalogueBody.class.getSimpleName());
    }

    private static Schema page() {
        Schema<?> items = new Schema<>().items(gear());
        items.addType("array");
        Schema<?> next = new Schema<>();
        next.addType("string");
        Schema<?> page = new Schema<>()
                .addProperty("items", items)
                .addProperty("next", next)
                .addRequiredItem("items");
        page.addType("object");
        return page;
    }

    private static Schema<?> reference(String name) {
        return new Schema<>().$ref("#/components/schemas/" + name);
    }
}
