package rasterfit.app.access;

import java.util.EnumSet;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The admin token that the configuration names. It is of the user's own making, so its form is checked: long enough for 128
 * bits in hexadecimal digits, and not one character over and over. Only its hash is kept.
 */
final class AdminToken {
    static final String PROPERTY = "rasterfit.access.admin-token";

    /** What can be sent as a token at all (RFC 6750 §2.1). */
    private static final Pattern FORM = Pattern.compile("[A-Za-z0-9._~+/-]{32,500}=*");

    /** 32 random hexadecimal digits have fewer in one of some ten thousand cases. */
    private static final int LEAST_DIFFERENT = 10;

    private final @Nullable String sha256;
    private final Caller caller;

    private AdminToken(@Nullable String sha256, Caller caller) {
        this.sha256 = sha256;
        this.caller = caller;
    }

    /**
     * @param configured absent or empty where there is none
     * @throws StartRefusedException if it could be guessed
     */
    static AdminToken of(@Nullable String configured, String owner) {
        Caller caller = new Caller(owner, EnumSet.allOf(Scope.class));
        if (configured == null || configured.isEmpty()) {
            return new AdminToken(null, caller);
        }
        if (!FORM.matcher(configured).matches() || configured.chars().distinct().count() < LEAST_DIFFERENT) {
            throw new StartRefusedException(
                    "The value of " + PROPERTY + " could be guessed or cannot be sent as a token.",
                    "Use at least 32 random characters out of A-Z a-z 0-9 - . _ ~ + /, such as those that"
                            + " `openssl rand -hex 32` prints.");
        }
        return new AdminToken(Secret.sha256(configured), caller);
    }

    boolean isConfigured() {
        return sha256 != null;
    }

    Optional<Caller> caller(String sent) {
        return sha256 != null && Secret.equal(sha256, Secret.sha256(sent)) ? Optional.of(caller) : Optional.empty();
    }
}
