package rasterfit.app.access;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.annotation.AnnotatedElementUtils;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.mvc.method.RequestMappingInfoHandlerMapping;

/**
 * Holds each request against the scope that its operation names. It looks at the method that will be called, not at paths,
 * which could come to differ from those of the controllers; a method without a scope is called for nobody.
 */
final class AccessInterceptor implements HandlerInterceptor {
    private static final Logger LOG = LoggerFactory.getLogger(AccessInterceptor.class);
    private static final String OWN_PACKAGE = "rasterfit.app";
    private static final String CONTRACT_PACKAGE = "org.springdoc";

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        if (handler instanceof HandlerMethod method && !isFrameworks(method)) {
            check(method);
        }
        return true;
    }

    /**
     * The contract, which is public, and the answer to {@code OPTIONS}, which names the methods of an address. What is no
     * method at all is the framework's search for files, of which there are none; before it comes the filter's rule.
     */
    private static boolean isFrameworks(HandlerMethod method) {
        Class<?> type = method.getBeanType();
        return type.getPackageName().startsWith(CONTRACT_PACKAGE)
                || type.getEnclosingClass() == RequestMappingInfoHandlerMapping.class;
    }

    private static void check(HandlerMethod method) {
        Scope needed = scopeOf(method);
        if (needed == null) {
            LOG.error("{} names no scope and is called for nobody", method.getShortLogMessage());
            throw AccessProblems.forNobody();
        }
        Caller caller = callerOf(SecurityContextHolder.getContext().getAuthentication());
        if (caller == null) {
            throw AccessProblems.tokenNeeded();
        }
        if (!caller.scopes().contains(needed)) {
            throw AccessProblems.scopeNeeded(needed);
        }
    }

    /** Absent unless it is one of the service's own methods and names one. */
    static @Nullable Scope scopeOf(HandlerMethod method) {
        if (!method.getBeanType().getPackageName().startsWith(OWN_PACKAGE)) {
            return null;
        }
        Requires requires = method.getMethodAnnotation(Requires.class);
        if (requires == null) {
            requires = AnnotatedElementUtils.findMergedAnnotation(method.getBeanType(), Requires.class);
        }
        return requires == null ? null : requires.value();
    }

    static @Nullable Caller callerOf(@Nullable Authentication authentication) {
        return authentication != null && authentication.getPrincipal() instanceof Caller caller ? caller : null;
    }
}
