package rasterfit.app.access;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Who is asked for a token. */
@Configuration(proxyBeanMethods = false)
class AccessConfiguration {
    @Bean
    Callers callers() {
        return () -> Caller.LOCAL;
    }
}
