package rasterfit.app.access;

import org.springframework.boot.autoconfigure.condition.ConditionalOnWebApplication;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.Ordered;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.AnonymousAuthenticationFilter;
import org.springframework.security.web.context.RequestAttributeSecurityContextRepository;
import org.springframework.security.web.context.SecurityContextRepository;
import org.springframework.security.web.firewall.HttpFirewall;
import org.springframework.security.web.firewall.StrictHttpFirewall;
import org.springframework.security.web.header.writers.CrossOriginResourcePolicyHeaderWriter.CrossOriginResourcePolicy;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter.ReferrerPolicy;
import org.springframework.security.web.header.writers.StaticHeadersWriter;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import rasterfit.app.problem.ProblemWriter;

/** What stands in front of the operations. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnWebApplication(type = ConditionalOnWebApplication.Type.SERVLET)
class WebAccessConfiguration implements WebMvcConfigurer {
    /** The contract tells nothing about what is stored. */
    private static final String[] CONTRACT = {"/v3/api-docs", "/v3/api-docs.yaml"};

    /** Who supervises the service has no token; these say no more than yes or no. */
    private static final String[] HEALTH = {"/actuator/health", "/actuator/health/*"};

    private static final String SUPERVISION = "/actuator/**";

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new AccessInterceptor()).order(Ordered.HIGHEST_PRECEDENCE);
    }

    @Bean
    AccessMode accessMode(AccessProperties properties, ServerProperties server, AdminToken configured) {
        return AccessMode.of(properties.tokens(), server.getAddress(), configured.isConfigured());
    }

    @Bean
    StartCheck startCheck(AccessMode mode, ServerProperties server, AdminToken configured, Tokens tokens) {
        return new StartCheck(mode, server.getAddress(), configured, tokens);
    }

    /** Which methods there are is the matter of the operations, whose answer to others names those offered. */
    @Bean
    HttpFirewall firewall() {
        StrictHttpFirewall firewall = new StrictHttpFirewall();
        firewall.setUnsafeAllowAnyHttpMethod(true);
        return firewall;
    }

    @Bean
    SecurityFilterChain access(
            HttpSecurity http, AccessMode mode, AdminToken configured, Tokens tokens, ProblemWriter writer) {
        SecurityContextRepository contexts = new RequestAttributeSecurityContextRepository();
        if (mode == AccessMode.OPEN) {
            http.addFilterBefore(new LoopbackGuard(writer), AnonymousAuthenticationFilter.class);
        }
        http.addFilterBefore(
                new BearerFilter(mode, configured, tokens, contexts, writer), AnonymousAuthenticationFilter.class);
        // Whatever is not named here needs a caller; which scope, the operation says: AccessInterceptor.
        http.authorizeHttpRequests(requests -> requests.requestMatchers(CONTRACT)
                .permitAll()
                .requestMatchers(HEALTH)
                .permitAll()
                .requestMatchers(SUPERVISION)
                .hasAuthority(Scope.ADMIN.name())
                .anyRequest()
                .authenticated());
        http.exceptionHandling(refusals -> refusals.authenticationEntryPoint(
                        (request, response, refused) -> writer.write(AccessProblems.tokenNeeded(), request, response))
                .accessDeniedHandler((request, response, refused) ->
                        writer.write(AccessProblems.scopeNeeded(Scope.ADMIN), request, response)));
        return withoutSessions(withHeaders(http, contexts)).build();
    }

    /** Nothing that a browser would send by itself identifies a caller, so there is no session and nothing to forge. */
    private static HttpSecurity withoutSessions(HttpSecurity http) {
        return http.sessionManagement(sessions -> sessions.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .csrf(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable)
                .logout(AbstractHttpConfigurer::disable)
                .formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable);
    }

    /** After the OWASP cheat sheet "REST security", for answers that are data and no page. */
    private static HttpSecurity withHeaders(HttpSecurity http, SecurityContextRepository contexts) {
        return http.securityContext(context -> context.securityContextRepository(contexts))
                .headers(headers -> headers
                        // Entity tags would be of no use under the framework's own "no-store".
                        .cacheControl(cache -> cache.disable())
                        .addHeaderWriter(new StaticHeadersWriter("Cache-Control", "private, no-cache"))
                        .httpStrictTransportSecurity(transport -> transport.disable())
                        .xssProtection(old -> old.disable())
                        .contentSecurityPolicy(
                                policy -> policy.policyDirectives("default-src 'none'; frame-ancestors 'none'"))
                        .referrerPolicy(referrer -> referrer.policy(ReferrerPolicy.NO_REFERRER))
                        .crossOriginResourcePolicy(
                                resources -> resources.policy(CrossOriginResourcePolicy.SAME_ORIGIN)));
    }
}
