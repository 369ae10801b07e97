package rasterfit.app.access;

import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** An operation as the framework found it, with what it takes to call it. */
record Endpoint(String method, String pattern, String mediaType, HandlerMethod handler) {
    private static final Pattern VARIABLE = Pattern.compile("\\{\\*?(\\w+)(:[^/]*)?}");

    /** Values for variables that take no word. */
    private static final Map<String, String> VALUES =
            Map.of("kind", "links", "section", "items", "revision", "1", "rank", "1");

    /** Of the service itself and of what tests add to it, without what other tests need. */
    static List<Endpoint> of(RequestMappingHandlerMapping mapping) {
        return mapping.getHandlerMethods().entrySet().stream()
                .filter(entry -> isOwn(entry.getValue()))
                .flatMap(entry -> of(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparing(Endpoint::toString))
                .toList();
    }

    static boolean isOwn(HandlerMethod handler) {
        return handler.getBeanType().getPackageName().startsWith("rasterfit.app")
                && !handler.getBeanType().getSimpleName().startsWith("Echo")
                && handler.getBeanType() != WithoutRuleController.class;
    }

    private static Stream<Endpoint> of(RequestMappingInfo info, HandlerMethod handler) {
        Set<RequestMethod> methods = info.getMethodsCondition().getMethods();
        String type = info.getConsumesCondition().getConsumableMediaTypes().stream()
                .map(MediaType::toString)
                .sorted()
                .findFirst()
                .orElse("");
        List<Endpoint> endpoints = new ArrayList<>();
        for (String pattern : new TreeSet<>(info.getPatternValues())) {
            methods.forEach(method -> endpoints.add(new Endpoint(method.name(), pattern, type, handler)));
        }
        return endpoints.stream();
    }

    Scope scope() {
        return java.util.Objects.requireNonNull(AccessInterceptor.scopeOf(handler), toString());
    }

    boolean namesAnElement() {
        return pattern.indexOf('{') >= 0;
    }

    /** The address of the list that its first element is in: all in front of the first variable. */
    String root() {
        return namesAnElement() ? pattern.substring(0, pattern.indexOf("/{")) : pattern;
    }

    String path() {
        return path("no-such-thing");
    }

    /** The path with an id for its first variable that takes a word. */
    String path(String id) {
        return VARIABLE.matcher(pattern).replaceAll(found -> value(found, id));
    }

    private static String value(java.util.regex.MatchResult found, String id) {
        return Matcher.quoteReplacement(VALUES.getOrDefault(found.group(1), id));
    }

    /** With a body of the right type, if any is taken; empty objects create nothing. */
    HttpRequest.Builder call(Function<String, HttpRequest.Builder> requests, String path) {
        HttpRequest.Builder request = requests.apply(path);
        if (mediaType.isEmpty()) {
            return request.method(method, BodyPublishers.noBody());
        }
        return request.header("Content-Type", mediaType).method(method, BodyPublishers.ofString("{}"));
    }

    static String words(List<Endpoint> endpoints) {
        return endpoints.stream().map(Endpoint::toString).collect(Collectors.joining(", "));
    }

    @Override
    public String toString() {
        return method + " " + pattern;
    }
}
