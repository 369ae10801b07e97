package rasterfit.app.access;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.security.core.context.SecurityContextHolder;

/** Who is calling, and who gets in first. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AccessProperties.class)
class AccessConfiguration {
    /** Where nobody logs in there is one caller only, also in a thread that handles no request. */
    @Bean
    Callers callers(ObjectProvider<AccessMode> mode) {
        return () -> {
            Caller caller = AccessInterceptor.callerOf(
                    SecurityContextHolder.getContext().getAuthentication());
            if (caller == null && mode.getIfAvailable() == AccessMode.OPEN) {
                return Caller.LOCAL;
            } else if (caller == null) {
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
