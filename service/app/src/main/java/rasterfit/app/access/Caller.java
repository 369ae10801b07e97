package rasterfit.app.access;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who sent the request that is being handled.
 *
 * @param owner whose collections it sees
 * @param tokenId of the token that was sent; absent without one, and for the one that the configuration names
 */
public record Caller(
        String owner, Set<Scope> scopes, @Nullable String tokenId) {
    /** The one user of a service that answers on the loopback address alone and asks for no token. */
    public static final Caller LOCAL = new Caller("local", EnumSet.allOf(Scope.class));

    public Caller {
        scopes = Set.copyOf(scopes);
    }

    public Caller(String owner, Set<Scope> scopes) {
        this(owner, scopes, null);
    }
}
