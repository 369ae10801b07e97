package rasterfit.app.transfer;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.MDC;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.ImportReport;
import rasterfit.app.problem.Problems;

/**
 * Works on imports, a few at once, and tells several times a second how far they are. When the service stops, after the last
 * request was answered, imports have some time to end; those that do not are undone.
 */
@Component
class ImportRunner implements SmartLifecycle {
    /** While one writes, another one can be checked. */
    private static final int AT_ONCE = 2;

    /** How many may be in work or wait, each with a temporary file (assumption). */
    static final int MOST = 6;

    private static final Duration TELL_EVERY = Duration.ofMillis(250);
    private static final Duration TIME_TO_END = Duration.ofSeconds(20);
    private static final Duration TIME_TO_UNDO = Duration.ofSeconds(5);
    private static final Logger LOG = LoggerFactory.getLogger(ImportRunner.class);

    private final ImportWork work;
    private final ImportStatuses statuses;
    private final Semaphore places = new Semaphore(MOST);
    private final Set<ImportJob> jobs = ConcurrentHashMap.newKeySet();
    private @Nullable ExecutorService workers;
    private @Nullable ScheduledExecutorService teller;
    private @Nullable Future<?> telling;

    ImportRunner(ImportWork work, ImportStatuses statuses) {
        this.work = work;
        this.statuses = statuses;
    }

    /** @throws rasterfit.app.problem.ProblemException 503 if there are too many imports already */
    void reserve() {
        if (!places.tryAcquire()) {
            throw Problems.unavailable("There are " + MOST + " imports in work already.", Duration.ofSeconds(2));
        }
    }

    /** Gives back what {@link #reserve} took, where no import was begun. */
    void giveBack() {
        places.release();
    }

    /** Begins with it as soon as a thread is free; its place and its text are given back at the end. */
    synchronized Future<ImportReport> submit(ImportJob job) {
        ExecutorService running = workers;
        if (running == null) {
            throw Problems.unavailable("The service stops.", Duration.ofSeconds(5));
        }
        Map<String, String> logged = MDC.getCopyOfContextMap();
        jobs.add(job);
        return running.submit(() -> {
            if (logged != null) {
                MDC.setContextMap(logged);
            }
            try {
                return work.run(job);
            } finally {
                jobs.remove(job);
                job.text().close();
                places.release();
                MDC.clear();
            }
        });
    }

    private void tell() {
        for (ImportJob job : jobs) {
            try {
                if (!statuses.progress(job)) {
                    job.end();
                }
            } catch (RuntimeException untold) {
                // Whatever it is, it must not end the telling of the others.
                LOG.warn("How far import {} is cannot be told", job.id(), untold);
            }
        }
    }

    @Override
    public synchronized void start() {
        workers = Executors.newFixedThreadPool(AT_ONCE, task -> new Thread(task, "catalogue-import"));
        teller = Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "catalogue-import-progress"));
        telling = teller.scheduleWithFixedDelay(
                this::tell, TELL_EVERY.toMillis(), TELL_EVERY.toMillis(), TimeUnit.MILLISECONDS);
    }

    @Override
    public void stop() {
        ExecutorService running = taken();
        if (running == null || teller == null || telling == null) {
            return;
        }
        running.shutdown();
        try {
            if (!running.awaitTermination(TIME_TO_END.toMillis(), TimeUnit.MILLISECONDS)) {
                jobs.forEach(ImportJob::end);
                running.awaitTermination(TIME_TO_UNDO.toMillis(), TimeUnit.MILLISECONDS);
            }
        } catch (InterruptedException hurried) {
            jobs.forEach(ImportJob::end);
            Thread.currentThread().interrupt();
        }
        telling.cancel(false);
        teller.shutdown();
    }

    /** From now on no import begins. */
    private synchronized @Nullable ExecutorService taken() {
        ExecutorService running = workers;
        workers = null;
        return running;
    }

    @Override
    public boolean isRunning() {
        return workers != null;
    }

    /** It stops after the web server, which may still wait for an import. */
    @Override
    public int getPhase() {
        return DemoImport.PHASE;
    }
}
