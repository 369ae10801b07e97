package rasterfit.app.transfer;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import rasterfit.app.problem.BodyLimit;

/** What imports need of the rest of the service. */
@Configuration(proxyBeanMethods = false)
class TransferConfiguration {
    /** 64 MiB (assumption): 20,000 items of 3 KiB. */
    private static final int GREATEST_BYTES = 64 << 20;

    @Bean
    BodyLimit importBodies() {
        return new BodyLimit(ImportService.PATH, GREATEST_BYTES);
    }
}
