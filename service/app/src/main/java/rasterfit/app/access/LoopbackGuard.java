package rasterfit.app.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.web.filter.OncePerRequestFilter;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.ProblemWriter;

/**
 * Keeps pages from elsewhere, open in a browser on the same machine, from using a service that asks nobody for a token. A name
 * that someone made point to the loopback address (DNS rebinding) shows in {@code Host}; a page of another origin shows in
 * {@code Origin}, which browsers send with every request that is not safe (Fetch standard, "append a request Origin header").
 */
final class LoopbackGuard extends OncePerRequestFilter {
    private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");
    private static final Pattern LOOPBACK = Pattern.compile("localhost|127(\\.\\d{1,3}){3}|\\[::1]");

    private final ProblemWriter writer;

    LoopbackGuard(ProblemWriter writer) {
        this.writer = writer;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        // As it was sent: what proxies say about the host can be said by a page as well.
        String host = request.getHeader(HttpHeaders.HOST);
        String origin = request.getHeader(HttpHeaders.ORIGIN);
        if (host != null && !isLoopback(host)) {
            writer.write(
                    new ProblemException(
                            ProblemType.MISDIRECTED_REQUEST,
                            "Without tokens this service answers to localhost, 127.0.0.1 and [::1] alone, not to "
                                    + host + "."),
                    request,
                    response);
        } else if (origin != null && !SAFE.contains(request.getMethod()) && !isOwn(origin, host)) {
            writer.write(
                    new ProblemException(
                            ProblemType.FORBIDDEN,
                            "Without tokens this service does nothing for pages of another origin."),
                    request,
                    response);
        } else {
            chain.doFilter(request, response);
        }
    }

    private static boolean isLoopback(String host) {
        String name = nameIn(host);
        return name != null && LOOPBACK.matcher(name.toLowerCase(Locale.ROOT)).matches();
    }

    private static @Nullable String nameIn(String host) {
        try {
            return URI.create("http://" + host).getHost();
        } catch (IllegalArgumentException malformed) {
            return null;
        }
    }

    private static boolean isOwn(String origin, @Nullable String host) {
        return host != null && origin.equalsIgnoreCase("http://" + host);
    }
}
