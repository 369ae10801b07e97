package rasterfit.app.idempotency;

import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/**
 * A request that stores something.
 *
 * @param key what the client calls it; absent where the client does not mind if it is done twice
 * @param operation method and path, such as {@code POST /v1/catalogue/imports}, with the query if that changes what is done
 * @param body as it was read; anything that can be written as JSON
 */
public record IdempotentRequest(@Nullable String key, String operation, Object body) {
    /** The header field that carries the key. */
    public static final String HEADER = "Idempotency-Key";

    private static final Pattern KEY = Pattern.compile("[\\x21-\\x7e]{1,255}");

    /** @throws ProblemException 400 for a key that is none */
    public IdempotentRequest {
        if (key != null && !KEY.matcher(key).matches()) {
            String message = "A key has 1 to 255 visible ASCII characters.";
            throw new ProblemException(
                    ProblemType.INVALID_PARAMETER,
                    HEADER + ": " + message,
                    List.of(ProblemError.inParameter(HEADER, message)));
        }
    }
}
