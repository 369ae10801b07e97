package rasterfit.app;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import rasterfit.app.access.AdminTokenCommand;

/** Starts the service, or runs a command in its place. */
@SpringBootApplication
public class RasterfitApplication {

    public static void main(String[] args) {
        SpringApplication service = new SpringApplication(RasterfitApplication.class);
        if (AdminTokenCommand.isAskedFor(args)) {
            System.out.println(AdminTokenCommand.run(service, args));
        } else {
            service.run(args);
        }
    }
}
