package rasterfit.app.problem;

import org.apache.catalina.core.StandardHost;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Hooks the problems into the framework and the container. */
@Configuration(proxyBeanMethods = false)
class ProblemConfiguration implements WebMvcConfigurer {

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(new QueryParameters());
    }

    @Bean
    WebServerFactoryCustomizer<TomcatServletWebServerFactory> containerErrorsAsProblems(ProblemWriter writer) {
        return factory -> factory.addContextCustomizers(context -> {
            StandardHost host = (StandardHost) context.getParent();
            // Naming the class keeps the host from adding its own page; the last valve added is the first to report.
            host.setErrorReportValveClass(ProblemReportValve.class.getName());
            host.getPipeline().addValve(new ProblemReportValve(writer));
        });
    }

    /** Who asks before sending a long body (RFC 9110 §10.1.1) is let send it when it is read, not when it may yet be refused. */
    @Bean
    WebServerFactoryCustomizer<TomcatServletWebServerFactory> longBodiesOnlyWhenRead() {
        return factory ->
                factory.addConnectorCustomizers(connector -> connector.setProperty("continueResponseTiming", "onRead"));
    }
}
