package rasterfit.app.problem;

import jakarta.validation.ConstraintViolation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSourceResolvable;
import org.springframework.validation.ObjectError;
import org.springframework.validation.method.ParameterValidationResult;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.method.annotation.HandlerMethodValidationException;

/** Broken Bean Validation constraints as 422, sorted by place because the validator promises no order. */
final class ValidationProblems {

    private static final Comparator<ProblemError> BY_PLACE = Comparator.comparing(
                    (ProblemError error) -> error.pointer() != null ? error.pointer() : "")
            .thenComparing(error -> error.parameter() != null ? error.parameter() : "")
            .thenComparing(ProblemError::message);

    private ValidationProblems() {}

    /** From a body that was validated as a whole. */
    static ProblemException of(MethodArgumentNotValidException thrown) {
        List<ProblemError> errors = new ArrayList<>();
        for (ObjectError error : thrown.getBindingResult().getAllErrors()) {
            errors.add(inBody(error.unwrap(ConstraintViolation.class)));
        }
        return sorted(errors);
    }

    /** From a handler method with constraints on its parameters. */
    static ProblemException of(HandlerMethodValidationException thrown) {
        List<ProblemError> errors = new ArrayList<>();
        for (ParameterValidationResult result : thrown.getParameterValidationResults()) {
            boolean body = result.getMethodParameter().hasParameterAnnotation(RequestBody.class);
            for (MessageSourceResolvable error : result.getResolvableErrors()) {
                ConstraintViolation<?> violation = result.unwrap(error, ConstraintViolation.class);
                errors.add(body ? inBody(violation) : inParameter(result, violation));
            }
        }
        return sorted(errors);
    }

    private static ProblemError inBody(ConstraintViolation<?> violation) {
        return ProblemError.at(Pointers.of(violation.getPropertyPath()), violation.getMessage(), limit(violation));
    }

    private static ProblemError inParameter(ParameterValidationResult result, ConstraintViolation<?> violation) {
        String name = QueryParameters.nameOf(result.getMethodParameter());
        return new ProblemError(null, name, violation.getMessage(), limit(violation));
    }

    /** The limits of the standard constraints; another constraint says its limit in its message. */
    private static @Nullable String limit(ConstraintViolation<?> violation) {
        Map<String, Object> attributes = violation.getConstraintDescriptor().getAttributes();
        Class<?> kind = violation.getConstraintDescriptor().getAnnotation().annotationType();
        return switch (kind.getSimpleName()) {
            case "Min", "Max", "DecimalMin", "DecimalMax" -> String.valueOf(attributes.get("value"));
            case "Positive", "PositiveOrZero", "Negative", "NegativeOrZero" -> "0";
            case "Size" -> attributes.get("min") + ".." + attributes.get("max");
            default -> null;
        };
    }

    private static ProblemException sorted(List<ProblemError> errors) {
        errors.sort(BY_PLACE);
        return Problems.invalid(errors);
    }
}
