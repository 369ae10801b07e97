package rasterfit.app.catalogue;

import java.time.Duration;
import org.springframework.dao.PessimisticLockingFailureException;
import org.springframework.stereotype.Component;
import rasterfit.app.problem.Problems;

/** Puts writers to the catalogue one after another, none of them waiting for ever. */
@Component
class WriteLock {
    /** How long a change of one item waits for an import to end (assumption). */
    static final Duration FOR_ONE_ITEM = Duration.ofSeconds(5);

    /** How long an import waits for another one; below the longest silence that the connection takes for a break. */
    static final Duration FOR_MANY = Duration.ofSeconds(30);

    private static final Duration TRY_AGAIN_AFTER = Duration.ofSeconds(5);

    private final States states;

    WriteLock(States states) {
        this.states = states;
    }

    /**
     * Holds the lock until the transaction ends.
     *
     * @throws rasterfit.app.problem.ProblemException 503 if others write for longer than the wait
     */
    CatalogueState take(Duration atMost) {
        states.waitAtMost(Long.toString(atMost.toMillis()));
        try {
            return states.lock();
        } catch (PessimisticLockingFailureException stillWriting) {
            var problem = Problems.unavailable(
                    "Another change of the catalogue was still being written after " + atMost.toSeconds() + " s.",
                    TRY_AGAIN_AFTER);
            problem.initCause(stillWriting);
            throw problem;
        }
    }
}
