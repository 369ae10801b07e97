package rasterfit.app.contract;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.media.Schema;
import java.util.Map;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;

/**
 * Members that hold any JSON say themselves which types it may have. The generator adds what it sees of the library's class, which
 * is nothing that a client could send.
 */
@Component
@Order(1)
@SuppressWarnings({"rawtypes", "unchecked"}) // the model of the contract is made of raw schemas
final class AnyValues implements OpenApiCustomizer {
    private static final String NAME = JsonNode.class.getSimpleName();
    private static final String REFERENCE = "#/components/schemas/" + NAME;

    @Override
    public void customise(OpenAPI contract) {
        if (contract.getComponents() == null || contract.getComponents().getSchemas() == null) {
            return;
        }
        Map<String, Schema> schemas = contract.getComponents().getSchemas();
        schemas.remove(NAME);
        schemas.values().stream()
                .filter(schema -> schema.getProperties() != null)
                .flatMap(schema -> ((Map<String, Schema>) schema.getProperties()).values().stream())
                .filter(member -> REFERENCE.equals(member.get$ref()))
                .forEach(member -> member.set$ref(null));
    }
}
