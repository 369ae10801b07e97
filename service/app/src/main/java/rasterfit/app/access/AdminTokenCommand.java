package rasterfit.app.access;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.WebApplicationType;
import org.springframework.context.ConfigurableApplicationContext;

/** Starts the service without its web server, gives an admin token, and ends. */
public final class AdminTokenCommand {
    /** What to start the service with. */
    public static final String ARGUMENT = "create-admin-token";

    private AdminTokenCommand() {}

    public static boolean isAskedFor(String[] args) {
        return List.of(args).contains(ARGUMENT);
    }

    /** The secret of the new token, for the one who started the command. */
    public static String run(SpringApplication service, String[] args) {
        service.setWebApplicationType(WebApplicationType.NONE);
        // Whatever reads the token reads nothing else.
        service.setDefaultProperties(Map.of("logging.level.root", "error"));
        try (ConfigurableApplicationContext context = service.run(args)) {
            String owner = context.getBean(AccessProperties.class).adminOwner();
            return context.getBean(Tokens.class)
                    .issue(owner, ARGUMENT, Arrays.asList(Scope.values()), null)
                    .secret();
        }
    }
}
