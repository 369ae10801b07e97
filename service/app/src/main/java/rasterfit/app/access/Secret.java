package rasterfit.app.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the holder of a token sends: {@code rft_}, a public id of 64 bits, {@code _}, and 256 random bits in base64url.
 *
 * <p>What is kept of it is its SHA-256 (FIPS 180-4). A slow, salted hash protects secrets that people choose; one with at
 * least 112 random bits cannot be guessed from a fast one either (NIST SP 800-63B-3 §5.1.2.2 on look-up secrets), and every
 * request has to pay for it.
 */
final class Secret {
    private static final Pattern FORM = Pattern.compile("rft_([0-9a-f]{16})_[A-Za-z0-9_-]{43}");
    private static final int ID_BYTES = 8;
    private static final int RANDOM_BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private final String id;
    private final String text;

    private Secret(String id, String text) {
        this.id = id;
        this.text = text;
    }

    static Secret random() {
        byte[] id = new byte[ID_BYTES];
        byte[] secret = new byte[RANDOM_BYTES];
        RANDOM.nextBytes(id);
        RANDOM.nextBytes(secret);
        String written = HexFormat.of().formatHex(id);
        return new Secret(
                written,
                "rft_" + written + "_" + Base64.getUrlEncoder().withoutPadding().encodeToString(secret));
    }

    /** Empty if it was never given here. */
    static Optional<Secret> read(String text) {
        Matcher form = FORM.matcher(text);
        return form.matches() ? Optional.of(new Secret(form.group(1), text)) : Optional.empty();
    }

    String id() {
        return id;
    }

    /** What is sent. */
    String text() {
        return text;
    }

    String sha256() {
        return sha256(text);
    }

    static String sha256(String text) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(sha.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    /** Takes as long wherever the two differ. */
    static boolean equal(String sha256, String other) {
        return MessageDigest.isEqual(
                sha256.getBytes(StandardCharsets.US_ASCII), other.getBytes(StandardCharsets.US_ASCII));
    }

    /** Without the secret, which belongs in no log. */
    @Override
    public String toString() {
        return "Secret[" + id + "]";
    }
}
