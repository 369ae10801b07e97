package rasterfit.app.access;

/**
 * A token at the one moment at which it can be told.
 *
 * @param secret what its holder sends
 */
public record IssuedToken(AccessToken token, String secret) {
    /** Without the secret, which belongs in no log. */
    @Override
    public String toString() {
        return "IssuedToken[" + token.id() + "]";
    }
}
