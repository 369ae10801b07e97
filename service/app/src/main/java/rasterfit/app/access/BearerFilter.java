package rasterfit.app.access;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.http.HttpHeaders;
import org.springframework.security.core.authority.AuthorityUtils;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.authentication.preauth.PreAuthenticatedAuthenticationToken;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.transaction.TransactionException;
import org.springframework.web.filter.OncePerRequestFilter;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemWriter;
import rasterfit.app.problem.Problems;

/**
 * Finds out who sends a request (RFC 6750 §2.1; tokens in bodies and queries, which end up in logs, are not taken). Whoever
 * sends something in {@code Authorization} believes that it is looked at, so anything there that is no valid token is refused,
 * also where none is needed.
 */
final class BearerFilter extends OncePerRequestFilter {
    private static final Logger LOG = LoggerFactory.getLogger(BearerFilter.class);
    private static final Pattern BEARER = Pattern.compile("[Bb][Ee][Aa][Rr][Ee][Rr] +([A-Za-z0-9._~+/-]+=*)");

    private final AccessMode mode;
    private final AdminToken configured;
    private final Tokens tokens;
    private final SecurityContextRepository contexts;
    private final ProblemWriter writer;

    BearerFilter(
            AccessMode mode,
            AdminToken configured,
            Tokens tokens,
            SecurityContextRepository contexts,
            ProblemWriter writer) {
        this.mode = mode;
        this.configured = configured;
        this.tokens = tokens;
        this.contexts = contexts;
        this.writer = writer;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            caller(request).ifPresent(caller -> know(caller, request, response));
        } catch (ProblemException refused) {
            writer.write(refused, request, response);
            return;
        } catch (DataAccessException | TransactionException away) {
            LOG.warn("A token could not be looked up: {}", away.getMessage());
            writer.write(
                    Problems.unavailable("Tokens cannot be looked up now.", Duration.ofSeconds(2)), request, response);
            return;
        }
        chain.doFilter(request, response);
    }

    private Optional<Caller> caller(HttpServletRequest request) {
        List<String> sent = Collections.list(request.getHeaders(HttpHeaders.AUTHORIZATION));
        if (sent.isEmpty()) {
            return mode == AccessMode.OPEN ? Optional.of(Caller.LOCAL) : Optional.empty();
        }
        Matcher bearer = BEARER.matcher(sent.get(0));
        if (sent.size() > 1 || !bearer.matches()) {
            throw AccessProblems.tokenInvalid();
        }
        String secret = bearer.group(1);
        return Optional.of(
                configured.caller(secret).or(() -> tokens.caller(secret)).orElseThrow(AccessProblems::tokenInvalid));
    }

    private void know(Caller caller, HttpServletRequest request, HttpServletResponse response) {
        String[] scopes = caller.scopes().stream().map(Scope::name).toArray(String[]::new);
        SecurityContext context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(
                new PreAuthenticatedAuthenticationToken(caller, "", AuthorityUtils.createAuthorityList(scopes)));
        SecurityContextHolder.setContext(context);
        // For a request that goes on in another thread.
        contexts.saveContext(context, request, response);
    }
}
