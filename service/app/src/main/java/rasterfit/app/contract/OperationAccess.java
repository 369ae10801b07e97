package rasterfit.app.contract;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import java.util.List;
import org.springdoc.core.customizers.GlobalOperationCustomizer;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.stereotype.Component;
import org.springframework.web.method.HandlerMethod;
import rasterfit.app.access.Requires;

/** Names the scope that an operation needs. A service without tokens answers without any, so none is another choice. */
@Component
final class OperationAccess implements GlobalOperationCustomizer {
    /** The name of the security scheme. */
    static final String TOKEN = "token";

    @Override
    public Operation customize(Operation operation, HandlerMethod method) {
        Requires requires = method.getMethodAnnotation(Requires.class);
        if (requires == null) {
            requires = AnnotatedElementUtils.findMergedAnnotation(method.getBeanType(), Requires.class);
        }
        if (requires != null) {
            // OpenAPI 3.1 allows names of roles here for every type of scheme.
            operation.setSecurity(List.of(
                    new SecurityRequirement().addList(TOKEN, requires.value().name()), new SecurityRequirement()));
        }
        return operation;
    }
}
