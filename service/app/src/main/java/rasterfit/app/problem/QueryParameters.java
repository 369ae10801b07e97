package rasterfit.app.problem;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
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

    private static void check(@Nullable String query, Set<String> declared) {
        List<ProblemError> unknown = new ArrayList<>();
        for (String name : names(query)) {
            if (!declared.contains(name)) {
                unknown.add(ProblemError.inParameter(
                        name,
                        declared.isEmpty()
                                ? "No query parameter is known here."
                                : "Unknown query parameter; known here: " + String.join(", ", declared) + "."));
            }
        }
        if (!unknown.isEmpty()) {
            throw Problems.of(ProblemType.UNKNOWN_PARAMETER, unknown);
        }
    }

    /** Read from the query itself: the container's parameter map also holds the fields of a form in the body. */
    private static Set<String> names(@Nullable String query) {
        Set<String> names = new TreeSet<>();
        if (query == null || query.isEmpty()) {
            return names;
        }
        for (String pair : query.split("&", -1)) {
            if (pair.isEmpty()) {
                continue;
            }
            int equals = pair.indexOf('=');
            String name = decode(equals < 0 ? pair : pair.substring(0, equals));
            if (equals >= 0) {
                decode(pair.substring(equals + 1));
            }
            names.add(name);
        }
        return names;
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

    private static Set<String> declared(HandlerMethod method) {
        Set<String> names = new TreeSet<>();
        for (MethodParameter parameter : method.getMethodParameters()) {
            if (parameter.hasParameterAnnotation(RequestParam.class)) {
                names.add(nameOf(parameter));
            }
        }
        return names;
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
