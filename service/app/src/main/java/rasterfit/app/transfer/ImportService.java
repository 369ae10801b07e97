package rasterfit.app.transfer;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import rasterfit.app.access.Callers;
import rasterfit.app.catalogue.ImportReport;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;

/** Takes imports in, and answers with the report or with where to look for it. */
@Service
class ImportService {
    /** Texts that are being sent at once (assumption). */
    private static final int MOST_UPLOADS = 32;

    private final Semaphore uploads = new Semaphore(MOST_UPLOADS);

    static final String PATH = "/v1/catalogue/imports";

    /** Whoever waits longer is better told how far it is. */
    private static final Duration ANSWERED_WITHIN = Duration.ofSeconds(1);

    private final ImportRunner runner;
    private final ImportStatuses statuses;
    private final Idempotency idempotency;
    private final Callers callers;

    ImportService(ImportRunner runner, ImportStatuses statuses, Idempotency idempotency, Callers callers) {
        this.runner = runner;
        this.statuses = statuses;
        this.idempotency = idempotency;
        this.callers = callers;
    }

    /**
     * What a client is told.
     *
     * @param report of an import that ended in time
     * @param running how far it is otherwise
     */
    record Outcome(@Nullable ImportReport report, @Nullable ImportAnswer running) {}

    /**
     * @param table the kind of a table; null for the JSON document
     * @param ifMatch which state of the catalogue is changed; absent where any will do
     * @param key counts only for an import that writes
     */
    Outcome begin(
            InputStream body,
            @Nullable Kind table,
            boolean isOnlyChecked,
            @Nullable String ifMatch,
            @Nullable String key)
            throws IOException {
        String owner = callers.current().owner();
        SentText text = taken(body, table);
        boolean isReserved = false;
        boolean isBegun = false;
        try {
            runner.reserve();
            isReserved = true;
            String operation = "POST " + PATH + (table == null ? "" : "?kind=" + table.path());
            IdempotentRequest request = new IdempotentRequest(isOnlyChecked ? null : key, operation, text.sha256());
            Optional<ImportReport> before = idempotency.answered(owner, request, ImportReport.class);
            if (before.isPresent()) {
                return new Outcome(before.get(), null);
            }
            ImportJob job = new ImportJob(UUID.randomUUID().toString(), owner, request, text, isOnlyChecked, ifMatch);
            statuses.begin(job);
            Future<ImportReport> future = runner.submit(job);
            isBegun = true;
            return awaited(job, future);
        } finally {
            if (!isBegun) {
                if (isReserved) {
                    runner.giveBack();
                }
                text.close();
            }
        }
    }

    /** A place among the imports is taken only once the text is here: a slow sender hinders nobody who has sent. */
    private SentText taken(InputStream body, @Nullable Kind table) throws IOException {
        if (!uploads.tryAcquire()) {
            throw Problems.unavailable(
                    "There are " + MOST_UPLOADS + " texts being sent already.", Duration.ofSeconds(2));
        }
        try {
            return SentText.of(body, table);
        } finally {
            uploads.release();
        }
    }

    private Outcome awaited(ImportJob job, Future<ImportReport> future) {
        try {
            return new Outcome(future.get(ANSWERED_WITHIN.toMillis(), TimeUnit.MILLISECONDS), null);
        } catch (TimeoutException goesOn) {
            return new Outcome(null, status(job.id()));
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return new Outcome(null, status(job.id()));
        } catch (ExecutionException failed) {
            Throwable cause = failed.getCause();
            if (cause instanceof CancellationException) {
                throw new ProblemException(ProblemType.CONFLICT, "The import was ended before it was done.");
            } else if (cause instanceof RuntimeException told) {
                throw told;
            }
            throw new IllegalStateException("an import failed", cause);
        }
    }

    ImportAnswer status(String id) {
        return statuses.find(id, callers.current().owner()).orElseThrow(() -> absent(id));
    }

    /** @throws ProblemException 409 if it has ended otherwise */
    void cancel(String id) {
        ImportState now = statuses.cancel(id, callers.current().owner()).orElseThrow(() -> absent(id));
        if (now != ImportState.CANCELLED) {
            throw new ProblemException(ProblemType.CONFLICT, "The import has ended already; it is " + now + ".");
        }
    }

    private static ProblemException absent(String id) {
        return Problems.notFound("import \"" + id + "\"");
    }
}
