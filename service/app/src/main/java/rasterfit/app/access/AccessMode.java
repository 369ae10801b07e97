package rasterfit.app.access;

import java.net.InetAddress;
import org.jspecify.annotations.Nullable;

/** How callers are told apart. */
enum AccessMode {
    /** Everyone who reaches the loopback address is {@link Caller#LOCAL}. */
    OPEN,
    /** Every caller sends a token. */
    TOKENS;

    /** What {@code rasterfit.access.tokens} can be. */
    enum Wanted {
        /** Tokens, unless the service answers on a loopback address alone and the configuration names none. */
        AUTO,
        REQUIRED
    }

    /**
     * @param address the service answers on; absent for every address of the machine
     * @param hasAdminToken whether the configuration names one
     */
    static AccessMode of(Wanted wanted, @Nullable InetAddress address, boolean hasAdminToken) {
        boolean isOpen = wanted == Wanted.AUTO && !hasAdminToken && address != null && address.isLoopbackAddress();
        return isOpen ? OPEN : TOKENS;
    }
}
