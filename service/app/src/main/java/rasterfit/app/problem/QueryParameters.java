package rasterfit.app.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.core.DefaultParameterNameDiscoverer;
import org.springframework.core.MethodParameter;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;

/**
 * Refuses query parameters that the called method does not declare with {@link RequestParam}: a mistyped name would
 * otherwise be ignored and the answer would look right. Only the service's own methods are checked.
 */
final class QueryParameters implements HandlerInterceptor {

    private static final String OWN_PACKAGE = "rasterfit.app";

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method
                && method.getBeanType().getPackageName().startsWith(OWN_PACKAGE)) {
            check(request.getQueryString(), declared(method));
        }
        return true;
    }

    private static void check(@Nullable String query, SortedMap<String, MethodParameter> declared) {
        List<ProblemError> unknown = new ArrayList<>();
        List<ProblemError> repeated = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (String name : names(query)) {
            MethodParameter parameter = declared.get(name);
            if (parameter == null) {
                unknown.add(ProblemError.inParameter(name, unknownAmong(declared.keySet())));
            } else if (!seen.add(name) && !takesSeveral(parameter.getParameterType())) {
                repeated.add(ProblemError.inParameter(name, "The parameter may be given once only."));
            }
        }
        if (!unknown.isEmpty()) {
            throw Problems.of(ProblemType.UNKNOWN_PARAMETER, unknown);
        } else if (!repeated.isEmpty()) {
            throw Problems.of(ProblemType.INVALID_PARAMETER, repeated);
        }
    }

    private static String unknownAmong(Set<String> known) {
        return known.isEmpty()
                ? "No query parameter is known here."
                : "Unknown query parameter; known here: " + String.join(", ", known) + ".";
    }

    private static boolean takesSeveral(Class<?> type) {
        return type.isArray() || Collection.class.isAssignableFrom(type);
    }

    /** Read from the query itself: the container's parameter map also holds the fields of a form in the body. */
    private static List<String> names(@Nullable String query) {
        List<String> names = new ArrayList<>();
        for (String pair : query == null ? new String[0] : query.split("&", -1)) {
            if (!pair.isEmpty()) {
                int equals = pair.indexOf('=');
                names.add(decode(equals < 0 ? pair : pair.substring(0, equals)));
                check(decode(pair.substring(equals + 1)));
            }
        }
        return names;
    }

    /** A control character is in no value that is taken here, and the database knows no NUL. */
    private static void check(String value) {
        if (value.chars().anyMatch(Character::isISOControl)) {
            throw new ProblemException(ProblemType.INVALID_PARAMETER, "The query holds a control character.");
        }
    }

    private static String decode(String encoded) {
        try {
            return URLDecoder.decode(encoded, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException malformed) {
            ProblemException problem = new ProblemException(
                    ProblemType.INVALID_PARAMETER, "The query holds a malformed percent-encoding: " + encoded);
            problem.initCause(malformed);
            throw problem;
        }
    }

    private static SortedMap<String, MethodParameter> declared(HandlerMethod method) {
        SortedMap<String, MethodParameter> parameters = new TreeMap<>();
        for (MethodParameter parameter : method.getMethodParameters()) {
            if (parameter.hasParameterAnnotation(RequestParam.class)) {
                parameters.put(nameOf(parameter), parameter);
            }
        }
        return parameters;
    }

    /** The name a client uses for a parameter of a handler method. */
    static String nameOf(MethodParameter parameter) {
        RequestParam annotation = parameter.getParameterAnnotation(RequestParam.class);
        if (annotation != null && !annotation.name().isEmpty()) {
            return annotation.name();
        }
        if (annotation != null && !annotation.value().isEmpty()) {
            return annotation.value();
        }
        parameter.initParameterNameDiscovery(new DefaultParameterNameDiscoverer());
        return String.valueOf(parameter.getParameterName());
    }
}
