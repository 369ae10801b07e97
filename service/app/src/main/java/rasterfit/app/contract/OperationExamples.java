package rasterfit.app.contract;

import com.fasterxml.jackson.core.JacksonException;
import io.swagger.v3.core.util.Json31;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.stereotype.Component;

/**
 * Shows an example of each operation that has one among the published examples: {@code identify-timing.json} and {@code
 * identify-timing-answer.json} belong to the operation {@code identifyTiming}.
 */
@Component
final class OperationExamples implements OpenApiCustomizer {
    private static final String FOLDER = "/openapi/examples/";
    private static final String JSON = "application/json";

    @Override
    public void customise(OpenAPI contract) {
        contract.getPaths().values().stream()
                .flatMap(path -> path.readOperations().stream())
                .forEach(OperationExamples::add);
    }

    private static void add(Operation operation) {
        String name = String.valueOf(operation.getOperationId())
                .replaceAll("([A-Z])", "-$1")
                .toLowerCase(Locale.ROOT);
        if (operation.getRequestBody() != null) {
            show(operation.getRequestBody().getContent(), name + ".json");
        }
        if (operation.getResponses().containsKey("200")) {
            show(operation.getResponses().get("200").getContent(), name + "-answer.json");
        }
    }

    private static void show(@Nullable Content content, String file) {
        if (content == null || !content.containsKey(JSON)) {
            return;
        }
        try (InputStream example = OperationExamples.class.getResourceAsStream(FOLDER + file)) {
            if (example != null) {
                String text = new String(example.readAllBytes(), StandardCharsets.UTF_8);
                content.get(JSON).setExample(Json31.mapper().readTree(text));
            }
        } catch (JacksonException malformed) {
            throw new IllegalStateException("the example " + file + " is not JSON", malformed);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the example " + file + " cannot be read", unreadable);
        }
    }
}
