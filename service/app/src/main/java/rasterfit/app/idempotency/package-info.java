/**
 * Requests that may be sent twice and are done once (the IETF's {@code Idempotency-Key} header field, draft 07). {@link
 * rasterfit.app.idempotency.Idempotency#once} is the entry point.
 */
@NullMarked
package rasterfit.app.idempotency;

import org.jspecify.annotations.NullMarked;
