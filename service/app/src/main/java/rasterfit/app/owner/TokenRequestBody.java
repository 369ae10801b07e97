package rasterfit.app.owner;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.app.access.Scope;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.RequiredMembers;

/**
 * A token that is asked for.
 *
 * @param owner for whom, a slug
 * @param name what its holder will know it by
 * @param expiresAt an RFC 3339 time; absent if it is to hold until it is revoked
 */
record TokenRequestBody(
        String owner,
        String name,
        List<Scope> scopes,
        @Nullable @Schema(format = "date-time") String expiresAt) {

    /** What was asked for, in values that are sound. */
    record Wanted(
            String owner,
            String name,
            List<Scope> scopes,
            @Nullable Instant expiresAt) {}

    /** @throws rasterfit.app.problem.ProblemException 400 or 422 with all that is wrong */
    Wanted read(Instant now) {
        RequiredMembers.check(this);
        Faults faults = new Faults();
        Place root = Place.root(faults);
        OwnerName.read(root.member("owner"), owner);
        root.member("name").text(name);
        Place at = root.member("scopes");
        int most = Scope.values().length;
        at.each(scopes, 1, most, (place, scope) -> scope);
        at.distinct(scopes, Scope::name);
        Instant expiry = expiresAt == null ? null : time(root.member("expiresAt"), expiresAt, now);
        faults.throwIfAny();
        return new Wanted(owner, name, scopes, expiry);
    }

    /** RFC 3339 has years of four digits. */
    private static final Instant LATEST = Instant.parse("9999-12-31T23:59:59Z");

    private static Instant time(Place at, String written, Instant now) {
        try {
            Instant time = OffsetDateTime.parse(written).toInstant();
            if (!time.isAfter(now)) {
                at.invalid("It lies in the past.");
            } else if (time.isAfter(LATEST)) {
                at.outOfRange("It lies after the year 9999.", LATEST.toString());
            }
            return time;
        } catch (DateTimeParseException malformed) {
            at.wrongForm("Expected a time with its offset, such as 2030-01-31T12:00:00Z (RFC 3339).");
            return now;
        }
    }
}
