package rasterfit.app.database;

import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** What is stored is dated by one clock, which tests replace. */
@Configuration(proxyBeanMethods = false)
class ClockConfiguration {
    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
