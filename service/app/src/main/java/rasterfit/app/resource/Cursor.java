package rasterfit.app.resource;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Optional;

/** Where a list goes on: the last element that was given, in a form that says nothing to a client. */
final class Cursor {
    private static final Base64.Encoder ENCODER = Base64.getUrlEncoder().withoutPadding();

    private Cursor() {}

    static String of(String last) {
        return ENCODER.encodeToString(last.getBytes(StandardCharsets.UTF_8));
    }

    /** Empty if it was not made by {@link #of}. */
    static Optional<String> read(String cursor) {
        try {
            String last = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
            boolean isOurs = of(last).equals(cursor) && last.chars().noneMatch(Character::isISOControl);
            return isOurs ? Optional.of(last) : Optional.empty();
        } catch (IllegalArgumentException malformed) {
            return Optional.empty();
        }
    }
}
