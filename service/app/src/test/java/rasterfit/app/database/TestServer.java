package rasterfit.app.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicInteger;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * One real PostgreSQL server for all tests of a JVM, in a container where a Docker engine answers and embedded elsewhere; each
 * context gets a database of its own.
 */
public final class TestServer {
    private static final String IMAGE = "postgres:" + EmbeddedServer.MAJOR_VERSION;
    private static final AtomicInteger DATABASES = new AtomicInteger();

    private TestServer() {}

    /** Where the server is; its superuser is {@code postgres}. */
    private record Address(String host, int port) {
        String url(String database) {
            return "jdbc:postgresql://" + host + ":" + port + "/" + database + "?user=postgres&password=postgres";
        }
    }

    /** Started by the first test that asks; stopped when the JVM ends. */
    private static final class Holder {
        static final Address SERVER = DockerClientFactory.instance().isDockerAvailable() ? contained() : embedded();
    }

    private static Address contained() {
        PostgreSQLContainer server =
                new PostgreSQLContainer(IMAGE).withUsername("postgres").withPassword("postgres");
        server.start();
        return new Address(server.getHost(), server.getFirstMappedPort());
    }

    private static Address embedded() {
        try {
            EmbeddedPostgres server = EmbeddedPostgres.builder()
                    // A database that is thrown away need not outlive a power cut.
                    .setServerConfig("fsync", "off")
                    .setServerConfig("max_connections", "300")
                    .start();
            return new Address("127.0.0.1", server.getPort());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The address of a new, empty database. */
    public static String newDatabase() {
        String name = "test_" + DATABASES.incrementAndGet();
        try (Connection connection = DriverManager.getConnection(Holder.SERVER.url("postgres"));
                Statement statement = connection.createStatement()) {
            statement.execute("create database " + name);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return Holder.SERVER.url(name);
    }
}
