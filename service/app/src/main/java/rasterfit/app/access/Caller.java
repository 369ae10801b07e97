package rasterfit.app.access;

import java.util.EnumSet;
import java.util.Set;

/**
 * Who sent the request that is being handled.
 *
 * @param owner whose collections it sees
 */
public record Caller(String owner, Set<Scope> scopes) {
    /** The one user of a service that answers on the loopback address alone and asks for no token. */
    public static final Caller LOCAL = new Caller("local", EnumSet.allOf(Scope.class));

    public Caller {
        scopes = Set.copyOf(scopes);
    }
}
