package rasterfit.app.access;

import java.net.InetAddress;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;

/** Looks, before the first request is taken, whether somebody could get in and not everybody can. */
final class StartCheck implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(StartCheck.class);

    private final AccessMode mode;
    private final @Nullable InetAddress address;
    private final AdminToken configured;
    private final Tokens tokens;
    private volatile boolean running;

    StartCheck(AccessMode mode, @Nullable InetAddress address, AdminToken configured, Tokens tokens) {
        this.mode = mode;
        this.address = address;
        this.configured = configured;
        this.tokens = tokens;
    }

    @Override
    public void start() {
        String where = address == null ? "every address of this machine" : address.getHostAddress();
        if (mode == AccessMode.OPEN) {
            LOG.info("No token is asked for on {}: whoever uses this machine may do everything", where);
        } else if (!configured.isConfigured() && !tokens.hasAdmin()) {
            throw new StartRefusedException(
                    "The service is to answer on " + where
                            + " and to ask for tokens, but there is no admin token with which to give any.",
                    "Either set " + AdminToken.PROPERTY
                            + " (RASTERFIT_ACCESS_ADMIN_TOKEN in the environment) to at least"
                            + " 32 random characters, or run the service once with the argument "
                            + AdminTokenCommand.ARGUMENT + ", which prints an admin token and ends. Without tokens the"
                            + " service answers on the loopback address alone (server.address=127.0.0.1).");
        } else {
            LOG.info("Every request on {} needs a token", where);
        }
        running = true;
    }

    @Override
    public void stop() {
        running = false;
    }

    @Override
    public boolean isRunning() {
        return running;
    }

    /** In front of the web server, which starts last. */
    @Override
    public int getPhase() {
        return 0;
    }
}
