package rasterfit.app.transfer;

import java.util.List;
import java.util.concurrent.CancellationException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;
import rasterfit.app.catalogue.BulkWrites;
import rasterfit.app.catalogue.CheckedItem;
import rasterfit.app.catalogue.ImportReport;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.problem.Problem;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;

/** Does one import from the text to the commit: first everything is checked, then everything is written. */
@Component
class ImportWork {
    private static final Logger LOG = LoggerFactory.getLogger(ImportWork.class);

    private final DocumentReader reader;
    private final BulkWrites catalogue;
    private final ImportStatuses statuses;
    private final Idempotency idempotency;
    private final TransactionTemplate transaction;

    ImportWork(
            DocumentReader reader,
            BulkWrites catalogue,
            ImportStatuses statuses,
            Idempotency idempotency,
            TransactionTemplate transaction) {
        this.reader = reader;
        this.catalogue = catalogue;
        this.statuses = statuses;
        this.idempotency = idempotency;
        this.transaction = transaction;
    }

    /**
     * However it ends, its status says so.
     *
     * @throws ProblemException if the document is faulty or the catalogue could not be written
     * @throws CancellationException if it was ended
     */
    ImportReport run(ImportJob job) {
        try {
            return imported(job);
        } catch (CancellationException ended) {
            LOG.info("Import {} was ended; nothing of it was written", job.id());
            tell(job, () -> statuses.lose(job));
            throw ended;
        } catch (RuntimeException | Error failed) {
            tell(job, () -> statuses.fail(job, problem(job, failed)));
            throw failed;
        }
    }

    private ImportReport imported(ImportJob job) {
        List<CheckedItem> items = reader.read(job.text(), job::checked);
        job.total(items.size());
        if (job.isOnlyChecked()) {
            ImportReport report = catalogue.compare(items);
            statuses.finish(job, report);
            return report;
        }
        return catalogue.refreshing(items, () -> transaction.execute(status -> written(job, items)));
    }

    private ImportReport written(ImportJob job, List<CheckedItem> items) {
        ImportReport report = idempotency.once(
                job.owner(),
                job.request(),
                ImportReport.class,
                () -> catalogue.write(items, job.owner(), job.ifMatch(), job::done));
        statuses.finish(job, report);
        return report;
    }

    /** If the database is away, the silence of the import tells that it is lost. */
    private static void tell(ImportJob job, Runnable telling) {
        try {
            telling.run();
        } catch (DataAccessException | TransactionException away) {
            LOG.warn("How import {} ended cannot be told: {}", job.id(), away.getMessage());
        }
    }

    private static Problem problem(ImportJob job, Throwable failed) {
        if (failed instanceof ProblemException problem) {
            return Problem.of(problem, null, null);
        } else if (failed instanceof DataAccessException || failed instanceof TransactionException) {
            LOG.warn("Import {} could not be written", job.id(), failed);
            return Problem.of(
                    Problems.unavailable("What is stored could not be reached.", ImportStatuses.SILENCE), null, null);
        }
        String requestId = MDC.get("requestId");
        LOG.error("Import {} failed, request id {}", job.id(), requestId, failed);
        return Problem.of(
                new ProblemException(
                        ProblemType.INTERNAL_ERROR,
                        "Something failed that should not. The log tells more under the request id."),
                null,
                requestId);
    }
}
