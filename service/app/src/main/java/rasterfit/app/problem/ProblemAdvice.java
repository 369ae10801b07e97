package rasterfit.app.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.NonTransientDataAccessResourceException;
import org.springframework.dao.RecoverableDataAccessException;
import org.springframework.dao.TransientDataAccessException;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.orm.jpa.JpaSystemException;
import org.springframework.security.web.firewall.RequestRejectedException;
import org.springframework.transaction.CannotCreateTransactionException;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.TransactionSystemException;
import org.springframework.web.ErrorResponse;
import org.springframework.web.HttpMediaTypeNotAcceptableException;
import org.springframework.web.HttpMediaTypeNotSupportedException;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.MethodArgumentNotValidException;
import org.springframework.web.bind.MissingRequestHeaderException;
import org.springframework.web.bind.MissingServletRequestParameterException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.method.annotation.HandlerMethodValidationException;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.servlet.NoHandlerFoundException;
import org.springframework.web.servlet.resource.NoResourceFoundException;
import org.springframework.web.util.DisconnectedClientHelper;
import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.JacksonIOException;

/** Everything that can go wrong while a request is handled, as a problem. */
@RestControllerAdvice
final class ProblemAdvice {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemAdvice.class);

    private final ProblemWriter writer;

    ProblemAdvice(ProblemWriter writer) {
        this.writer = writer;
    }

    @ExceptionHandler
    void handle(Exception thrown, HttpServletRequest request, HttpServletResponse response) throws IOException {
        if (DisconnectedClientHelper.isClientDisconnectedException(thrown)) {
            LOG.debug("The client left before it was answered", thrown);
            return;
        }
        ProblemException problem = problemOf(thrown, request);
        if (problem == null) {
            writer.writeUnexpected(thrown, request, response);
        } else {
            writer.write(problem, request, response);
        }
    }

    /** Null when the cause lies with the service. */
    private static @Nullable ProblemException problemOf(Exception thrown, HttpServletRequest request) {
        if (thrown instanceof ProblemException problem) {
            return problem;
        } else if (thrown instanceof HttpMessageNotReadableException unreadable) {
            return unreadable(unreadable);
        } else if (thrown instanceof MethodArgumentNotValidException invalid) {
            return ValidationProblems.of(invalid);
        } else if (thrown instanceof HandlerMethodValidationException invalid) {
            return ValidationProblems.of(invalid);
        } else if (thrown instanceof MissingServletRequestParameterException missing) {
            return parameter(missing.getParameterName(), "The parameter is needed.");
        } else if (thrown instanceof MissingRequestHeaderException missing) {
            return parameter(missing.getHeaderName(), "The header field is needed.");
        } else if (thrown instanceof MethodArgumentTypeMismatchException mismatch) {
            return parameter(mismatch.getName(), expectation(mismatch));
        } else if (thrown instanceof InvalidParameterException) {
            return new ProblemException(
                    ProblemType.INVALID_PARAMETER, "The parameters cannot be decoded or are too many.");
        } else if (thrown instanceof RequestRejectedException) {
            return new ProblemException(
                    ProblemType.BAD_REQUEST, "A parameter or header field holds control or unassigned characters.");
        } else if (thrown instanceof HttpRequestMethodNotSupportedException unsupported) {
            return methodNotAllowed(unsupported);
        } else if (thrown instanceof HttpMediaTypeNotSupportedException unsupported) {
            return unsupportedMediaType(unsupported);
        } else if (thrown instanceof HttpMediaTypeNotAcceptableException unacceptable) {
            return new ProblemException(
                    ProblemType.NOT_ACCEPTABLE, "Offered here: " + listOf(unacceptable.getSupportedMediaTypes()) + ".");
        } else if (thrown instanceof NoResourceFoundException || thrown instanceof NoHandlerFoundException) {
            return Problems.notFound("resource at " + request.getRequestURI());
        } else if (thrown instanceof DataAccessException || thrown instanceof TransactionException) {
            return away(thrown);
        } else if (thrown instanceof ErrorResponse other
                && other.getStatusCode().is4xxClientError()) {
            ProblemType type = ProblemType.ofStatus(other.getStatusCode().value());
            return new ProblemException(type, type.title() + ".");
        }
        return null;
    }

    private static @Nullable ProblemException unreadable(HttpMessageNotReadableException thrown) {
        for (Throwable cause = thrown.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof ProblemException problem) {
                return problem;
            } else if (cause instanceof IOException || cause instanceof JacksonIOException) {
                return Problems.cutShort();
            } else if (cause instanceof JacksonException json) {
                return JsonProblems.of(json);
            }
        }
        return new ProblemException(ProblemType.MISSING_BODY, "The request needs a body and has none.");
    }

    /** The database says nothing, is stopping or has no connection left: null where something else is wrong with it. */
    private static @Nullable ProblemException away(Exception thrown) {
        boolean isAway = thrown instanceof CannotCreateTransactionException
                || thrown instanceof TransientDataAccessException
                || thrown instanceof NonTransientDataAccessResourceException
                || thrown instanceof RecoverableDataAccessException
                || thrown instanceof JpaSystemException
                || thrown instanceof TransactionSystemException;
        LOG.warn("The database did not do its part", thrown);
        return isAway ? Problems.unavailable("What is stored cannot be reached now.", Duration.ofSeconds(2)) : null;
    }

    private static ProblemException parameter(String name, String message) {
        return Problems.of(ProblemType.INVALID_PARAMETER, List.of(ProblemError.inParameter(name, message)));
    }

    private static String expectation(MethodArgumentTypeMismatchException mismatch) {
        Class<?> type = mismatch.getParameter().nestedIfOptional().getNestedParameterType();
        if (type.isEnum()) {
            return "Known values: "
                    + Arrays.stream(type.getEnumConstants())
                            .map(constant -> ((Enum<?>) constant).name())
                            .collect(Collectors.joining(", "))
                    + ".";
        } else if (type == int.class || type == Integer.class || type == long.class || type == Long.class) {
            return "Expected an integer.";
        } else if (type == boolean.class || type == Boolean.class) {
            return "Expected true or false.";
        }
        return "The value has the wrong form.";
    }

    private static ProblemException methodNotAllowed(HttpRequestMethodNotSupportedException thrown) {
        String[] supported = thrown.getSupportedMethods();
        String allowed =
                supported == null ? "" : Arrays.stream(supported).sorted().collect(Collectors.joining(", "));
        return new ProblemException(ProblemType.METHOD_NOT_ALLOWED, "Offered here: " + allowed + ".")
                .withHeader("Allow", allowed);
    }

    private static ProblemException unsupportedMediaType(HttpMediaTypeNotSupportedException thrown) {
        String accepted = listOf(thrown.getSupportedMediaTypes());
        String sent = thrown.getContentType() == null
                ? "none"
                : thrown.getContentType().toString();
        ProblemException problem = new ProblemException(
                ProblemType.UNSUPPORTED_MEDIA_TYPE, "Accepted here: " + accepted + ". Sent: " + sent + ".");
        return accepted.isEmpty() ? problem : problem.withHeader("Accept", accepted);
    }

    private static String listOf(Collection<MediaType> types) {
        return types.stream().map(MediaType::toString).collect(Collectors.joining(", "));
    }
}
