package rasterfit.app.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The PostgreSQL server that comes with the service, for evaluation and single users. It keeps its data between runs, answers
 * on the loopback address alone, and confirms a write only when it is on the disk.
 */
final class EmbeddedServer implements AutoCloseable {
    /** The data of one major version cannot be read by another. */
    static final int MAJOR_VERSION = 18;

    static final String USER = "postgres";
    static final String DATABASE = "postgres";

    private static final Logger LOG = LoggerFactory.getLogger(EmbeddedServer.class);
    private static final Duration LONGEST_START = Duration.ofSeconds(60);

    private final DirectoryLock lock;
    private final EmbeddedPostgres server;

    private EmbeddedServer(DirectoryLock lock, EmbeddedPostgres server) {
        this.lock = lock;
        this.server = server;
    }

    /** @throws DirectoryInUseException if a live service uses the directory */
    static EmbeddedServer start(Path directory) {
        DirectoryLock lock = DirectoryLock.take(directory);
        try {
            Path data = directory.resolve("postgresql-" + MAJOR_VERSION);
            OrphanedServer.stop(data);
            OwnOnly.create(directory.resolve("binaries"));
            EmbeddedPostgres server = EmbeddedPostgres.builder()
                    .setDataDirectory(data)
                    .setCleanDataDirectory(false)
                    .setOverrideWorkingDirectory(directory.resolve("binaries").toFile())
                    // The context stops it, after the connections; a hook of its own would stop it under running
                    // requests.
                    .setRegisterShutdownHook(false)
                    .setPGStartupWait(LONGEST_START)
                    .setServerConfig("listen_addresses", "127.0.0.1")
                    .setServerConfig("fsync", "on")
                    .setServerConfig("synchronous_commit", "on")
                    .setServerConfig("full_page_writes", "on")
                    .start();
            LOG.info(
                    "PostgreSQL {} is embedded, for evaluation and single users; its data are in {}. Set {} to move them, or"
                            + " spring.datasource.url to use a server of your own.",
                    MAJOR_VERSION,
                    data,
                    DataDirectory.VARIABLE);
            return new EmbeddedServer(lock, server);
        } catch (IOException failed) {
            lock.close();
            throw new UncheckedIOException("the embedded PostgreSQL server does not start on " + directory, failed);
        } catch (RuntimeException failed) {
            lock.close();
            throw failed;
        }
    }

    String jdbcUrl() {
        return "jdbc:postgresql://127.0.0.1:" + server.getPort() + "/" + DATABASE;
    }

    @Override
    public void close() {
        try {
            server.close();
        } catch (IOException failed) {
            throw new UncheckedIOException("the embedded PostgreSQL server does not stop", failed);
        } finally {
            lock.close();
        }
    }
}
