package rasterfit.app.access;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.security.core.context.SecurityContextHolder;

/** Who is calling, and who gets in first. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AccessProperties.class)
class AccessConfiguration {
    @Bean
    Callers callers() {
        return () -> {
            Caller caller = AccessInterceptor.callerOf(
                    SecurityContextHolder.getContext().getAuthentication());
            if (caller == null) {
                throw new IllegalStateException("this thread handles no request of a known caller");
            }
            return caller;
        };
    }

    @Bean
    AdminToken adminToken(Environment environment, AccessProperties properties) {
        return AdminToken.of(environment.getProperty(AdminToken.PROPERTY), properties.adminOwner());
    }
}
