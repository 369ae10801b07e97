package rasterfit.app;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the service. */
@SpringBootApplication
public class RasterfitApplication {

    public static void main(String[] args) {
        SpringApplication.run(RasterfitApplication.class, args);
    }
}
