package rasterfit.app.contract;

import io.swagger.v3.core.converter.ModelConverters;
import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.security.SecurityScheme;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.stereotype.Component;
import rasterfit.app.problem.Problem;
import rasterfit.app.problem.ProblemType;

/** Names the service in the contract and adds to each operation the problems that it can answer with. */
@Component
final class OperationProblems implements OpenApiCustomizer {
    private static final String PROBLEM = "Problem";

    /** Names of operations on what is stored. */
    private static final Pattern STORED = Pattern.compile("Gear|Collection|Record");

    /** By operation. */
    private static final Map<String, Map<Integer, String>> OF_IMPORTS = Map.of(
            "importCatalogue",
            Map.of(
                    409,
                    "An import with the same idempotency key is still being worked on, or this one was ended.",
                    503,
                    "There are too many imports, or another one was written for too long."),
            "getImport",
            Map.of(404, ProblemType.NOT_FOUND.title()),
            "cancelImport",
            Map.of(404, ProblemType.NOT_FOUND.title(), 409, "The import has ended already."));

    @Override
    public void customise(OpenAPI contract) {
        contract.setInfo(new Info()
                .title("Rasterfit")
                .version("1")
                .description("Matches the video of an old game console to a display and explains each ranked setup."));
        Components components = contract.getComponents() == null ? new Components() : contract.getComponents();
        ModelConverters.getInstance(true).readAll(Problem.class).forEach(components::addSchemas);
        components.addSecuritySchemes(
                OperationAccess.TOKEN,
                new SecurityScheme()
                        .type(SecurityScheme.Type.HTTP)
                        .scheme("bearer")
                        .description("Needed unless the service answers on the loopback address alone."));
        contract.setComponents(components);
        contract.getPaths().forEach((path, item) -> item.readOperationsMap().forEach(OperationProblems::add));
    }

    private static void add(PathItem.HttpMethod method, Operation operation) {
        Map<Integer, String> problems = new TreeMap<>();
        problems.put(400, "The request is malformed, or names a member, value or parameter that is not known.");
        problems.put(401, ProblemType.UNAUTHENTICATED.title());
        problems.put(403, ProblemType.FORBIDDEN.title());
        problems.put(406, ProblemType.NOT_ACCEPTABLE.title());
        problems.put(500, ProblemType.INTERNAL_ERROR.title());
        if (operation.getRequestBody() != null || method == PathItem.HttpMethod.POST) {
            problems.put(413, ProblemType.CONTENT_TOO_LARGE.title());
            problems.put(415, ProblemType.UNSUPPORTED_MEDIA_TYPE.title());
            problems.put(422, "A value is out of range, does not fit the others, or asks for too much work.");
        }
        if (List.of("getToken", "revokeToken", "draftFromTemplate").contains(operation.getOperationId())) {
            problems.put(404, ProblemType.NOT_FOUND.title());
        }
        if ("deleteOwner".equals(operation.getOperationId())) {
            problems.put(422, "The confirmation does not name the caller.");
        }
        if (List.of("createToken", "createCollection", "putRecord", "createRecord", "patchRecord", "deleteRecord")
                .contains(operation.getOperationId())) {
            problems.put(409, ProblemType.CONFLICT.title());
        }
        boolean isStored = STORED.matcher(operation.getOperationId()).find();
        if (isStored
                && operation.getParameters().stream()
                        .anyMatch(one -> List.of("id", "collection").contains(one.getName()))) {
            problems.put(404, ProblemType.NOT_FOUND.title());
        }
        if (isStored && method != PathItem.HttpMethod.GET) {
            problems.put(412, ProblemType.PRECONDITION_FAILED.title());
            problems.put(428, ProblemType.PRECONDITION_REQUIRED.title());
        }
        problems.putAll(OF_IMPORTS.getOrDefault(String.valueOf(operation.getOperationId()), Map.of()));
        problems.forEach((status, description) ->
                operation.getResponses().addApiResponse(Integer.toString(status), response(description)));
        if ("match".equals(operation.getOperationId())) {
            operation
                    .getResponses()
                    .addApiResponse(
                            "503",
                            response("The match did not end in time.")
                                    .addHeaderObject(
                                            "Retry-After",
                                            new Header()
                                                    .description("Seconds to wait before another try")
                                                    .schema(new IntegerSchema())));
        }
    }

    private static ApiResponse response(String description) {
        Schema<?> reference = new Schema<>().$ref("#/components/schemas/" + PROBLEM);
        return new ApiResponse()
                .description(description.endsWith(".") ? description : description + ".")
                .content(new Content().addMediaType(Problem.MEDIA_TYPE, new MediaType().schema(reference)));
    }
}
