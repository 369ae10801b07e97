package rasterfit.app.database;

import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;

/** Without {@code spring.datasource.url} the service brings its own server; all else is the framework's own wiring. */
@Configuration(proxyBeanMethods = false)
@Conditional(EmbeddedDatabaseConfiguration.NoServerNamed.class)
class EmbeddedDatabaseConfiguration {

    @Bean(destroyMethod = "close")
    EmbeddedServer embeddedServer() {
        return EmbeddedServer.start(DataDirectory.of(System.getenv(), System.getProperty("user.home")));
    }

    @Bean
    JdbcConnectionDetails embeddedConnection(EmbeddedServer server) {
        return new JdbcConnectionDetails() {
            @Override
            public String getJdbcUrl() {
                return server.jdbcUrl();
            }

            @Override
            public String getUsername() {
                return EmbeddedServer.USER;
            }

            @Override
            public String getPassword() {
                return "";
            }
        };
    }

    static final class NoServerNamed implements Condition {
        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return !StringUtils.hasText(context.getEnvironment().getProperty("spring.datasource.url"));
        }
    }
}
