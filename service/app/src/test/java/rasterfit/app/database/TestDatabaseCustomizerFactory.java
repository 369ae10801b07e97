package rasterfit.app.database;

import java.util.List;
import java.util.Map;
import org.springframework.core.env.MapPropertySource;
import org.springframework.test.context.ContextConfigurationAttributes;
import org.springframework.test.context.ContextCustomizer;
import org.springframework.test.context.ContextCustomizerFactory;

/** Puts a database of {@link TestServer} under every Spring context of the tests. */
final class TestDatabaseCustomizerFactory implements ContextCustomizerFactory {
    @Override
    public ContextCustomizer createContextCustomizer(
            Class<?> testClass, List<ContextConfigurationAttributes> attributes) {
        return TestDatabase.INSTANCE;
    }

    /** Equal for all tests, so that contexts are shared. */
    private enum TestDatabase implements ContextCustomizer {
        INSTANCE;

        @Override
        public void customizeContext(
                org.springframework.context.ConfigurableApplicationContext context,
                org.springframework.test.context.MergedContextConfiguration configuration) {
            context.getEnvironment()
                    .getPropertySources()
                    .addFirst(new MapPropertySource(
                            "test database", Map.of("spring.datasource.url", TestServer.newDatabase())));
        }
    }
}
