package rasterfit.app.access;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A token as it is known after it was given: all but the secret.
 *
 * @param id its public part
 * @param scopes in the order of {@link Scope}
 * @param expiresAt absent if it holds until it is revoked
 * @param revokedAt absent unless it was
 * @param lastUsedAt to the minute; absent if it never was used
 */
@Schema(description = "A token as it is known after it was given: all but the secret")
public record AccessToken(
        String id,
        String owner,
        String name,
        List<Scope> scopes,
        Instant createdAt,
        @Nullable Instant expiresAt,
        @Nullable Instant revokedAt,
        @Nullable Instant lastUsedAt) {

    public AccessToken {
        scopes = scopes.stream().sorted().distinct().toList();
    }

    boolean holdsAt(Instant now) {
        return revokedAt == null && (expiresAt == null || now.isBefore(expiresAt));
    }
}
