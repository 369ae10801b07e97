package rasterfit.app.catalogue;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import rasterfit.app.problem.ProblemException;

/**
 * Keeps the snapshot as new as the stored catalogue, whichever instance wrote. The database notifies ({@code LISTEN}); looking
 * every second as well covers a lost connection. While the database is away, matches go on with the last snapshot.
 */
@Component
class CatalogueListener implements SmartLifecycle {
    static final String CHANNEL = "rasterfit_catalogue";

    private static final Logger LOG = LoggerFactory.getLogger(CatalogueListener.class);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(1);

    private final CatalogueSnapshots snapshots;
    private final DataSource dataSource;
    private volatile boolean running;
    private volatile Thread thread = new Thread();

    CatalogueListener(CatalogueSnapshots snapshots, DataSource dataSource) {
        this.snapshots = snapshots;
        this.dataSource = dataSource;
    }

    @Override
    public void start() {
        running = true;
        Thread started = new Thread(this::listen, "catalogue-listener");
        started.setDaemon(true);
        thread = started;
        started.start();
    }

    @Override
    public void stop() {
        running = false;
        thread.interrupt();
        try {
            thread.join(LONGEST_WAIT.multipliedBy(3).toMillis());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public boolean isRunning() {
        return running;
    }

    private void listen() {
        boolean isAway = false;
        while (running) {
            try (Connection connection = dataSource.getConnection()) {
                connection.setAutoCommit(true);
                try (Statement statement = connection.createStatement()) {
                    statement.execute("LISTEN " + CHANNEL);
                }
                isAway = false;
                follow(connection);
            } catch (SQLException | RuntimeException away) {
                if (!isAway && running) {
                    LOG.warn(
                            "The catalogue cannot be followed; matches go on with what is known: {}",
                            away.getMessage());
                }
                if (isAway) {
                    pause();
                }
                isAway = true;
            }
        }
    }

    private void follow(Connection connection) throws SQLException {
        PGConnection notified = connection.unwrap(PGConnection.class);
        while (running) {
            refresh();
            notified.getNotifications((int) LONGEST_WAIT.toMillis());
        }
    }

    /** A document that a newer release wrote and this one does not understand must not end the following. */
    private void refresh() {
        try {
            snapshots.refresh();
        } catch (ProblemException notUnderstood) {
            LOG.error("The stored catalogue holds an item that cannot be read: {}", notUnderstood.getMessage());
        }
    }

    private void pause() {
        try {
            Thread.sleep(LONGEST_WAIT.toMillis());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
