package rasterfit.app.owner;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.access.Caller;
import rasterfit.app.access.Scope;

/**
 * Who is calling.
 *
 * @param tokenId absent without a token, and for the admin token of the configuration
 */
record OwnerAnswer(
        String owner, List<Scope> scopes, @Nullable String tokenId) {
    static OwnerAnswer of(Caller caller) {
        return new OwnerAnswer(caller.owner(), caller.scopes().stream().sorted().toList(), caller.tokenId());
    }
}
