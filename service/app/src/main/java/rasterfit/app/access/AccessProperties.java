package rasterfit.app.access;

import java.util.regex.Pattern;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Who is asked for a token. The first admin token, {@code rasterfit.access.admin-token}, is not among these, so that it lies
 * in no object that could be written out: {@link AdminToken}.
 *
 * @param adminOwner the owner of the first admin token
 */
@ConfigurationProperties("rasterfit.access")
record AccessProperties(
        @DefaultValue("AUTO") AccessMode.Wanted tokens,
        @DefaultValue("admin") String adminOwner) {

    private static final Pattern OWNER = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");

    AccessProperties {
        if (!OWNER.matcher(adminOwner).matches() || adminOwner.length() > 100) {
            throw new IllegalArgumentException("rasterfit.access.admin-owner has to be a slug of up to 100 characters");
        }
    }
}
