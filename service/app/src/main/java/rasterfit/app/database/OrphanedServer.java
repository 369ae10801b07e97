package rasterfit.app.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A PostgreSQL server that outlived the service which started it. It is found by its {@code postmaster.pid}: the process id
 * in the first line, the data directory in the second (PostgreSQL documentation, "Database File Layout").
 */
final class OrphanedServer {
    private static final Logger LOG = LoggerFactory.getLogger(OrphanedServer.class);
    private static final Duration PATIENCE = Duration.ofSeconds(15);

    private OrphanedServer() {}

    /** Only to be called by the owner of the directory's {@link DirectoryLock}, so that no live service loses its server. */
    static void stop(Path data) {
        find(data).ifPresent(server -> {
            LOG.warn(
                    "Stopping PostgreSQL server {}, left behind on {} by a service that was killed",
                    server.pid(),
                    data);
            // SIGTERM lets open sessions end, of which an orphan has none; SIGKILL is recovered from by its log.
            server.destroy();
            if (!hasEnded(server)) {
                LOG.warn("PostgreSQL server {} does not stop and is killed", server.pid());
                server.destroyForcibly();
                hasEnded(server);
            }
        });
    }

    static Optional<ProcessHandle> find(Path data) {
        Path pidFile = data.resolve("postmaster.pid");
        if (!Files.exists(pidFile)) {
            return Optional.empty();
        }
        List<String> lines = read(pidFile);
        boolean isOurs = lines.size() > 1 && Path.of(lines.get(1)).equals(data);
        return isOurs ? processOf(lines.get(0)).filter(OrphanedServer::isPostgres) : Optional.empty();
    }

    private static Optional<ProcessHandle> processOf(String pid) {
        return pid.strip().matches("\\d{1,18}") ? ProcessHandle.of(Long.parseLong(pid.strip())) : Optional.empty();
    }

    /** The number may by now belong to something else. */
    private static boolean isPostgres(ProcessHandle process) {
        return process.info()
                .command()
                .map(command -> Path.of(command).getFileName())
                .map(Path::toString)
                .filter(name -> name.startsWith("postgres"))
                .isPresent();
    }

    private static boolean hasEnded(ProcessHandle process) {
        try {
            process.onExit().get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
            return true;
        } catch (TimeoutException alive) {
            return false;
        } catch (ExecutionException impossible) {
            throw new IllegalStateException(impossible);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static List<String> read(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(file + " cannot be read", e);
        }
    }
}
