package rasterfit.app.transfer;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.ImportReport;
import rasterfit.app.problem.Problem;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import tools.jackson.databind.ObjectMapper;

/**
 * Where every instance sees how far an import is. Each change is a small transaction of its own, but for {@link #finish}: it
 * belongs to the transaction that imports, so that an import is done if and only if it was still wanted. Times are those of
 * the database, since instances may disagree.
 */
@Component
class ImportStatuses {
    /** An import without a sign of life for so long is lost (assumption: no pause of a healthy process is longer). */
    static final Duration SILENCE = Duration.ofSeconds(10);

    /** How long it can be looked up how an import ended (assumption; as long as idempotency keys are kept). */
    private static final Duration KEPT = Duration.ofHours(24);

    private final JdbcClient database;
    private final ObjectMapper mapper;

    ImportStatuses(JdbcClient database, ObjectMapper mapper) {
        this.database = database;
        this.mapper = mapper;
    }

    /** @throws ProblemException 409 while an import with the same idempotency key runs */
    void begin(ImportJob job) {
        loseTheSilent();
        database.sql("delete from catalogue_import where ended_at < clock_timestamp() - make_interval(secs => ?)")
                .param(KEPT.toSeconds())
                .update();
        try {
            database.sql("insert into catalogue_import (id, owner, idempotency_key, state, started_at, heartbeat_at)"
                            + " values (:id, :owner, :key, 'RUNNING', clock_timestamp(), clock_timestamp())")
                    .param("id", job.id())
                    .param("owner", job.owner())
                    .param("key", job.request().key())
                    .update();
        } catch (DuplicateKeyException running) {
            ProblemException conflict = new ProblemException(
                            ProblemType.CONFLICT, "An import with this idempotency key is still being worked on.")
                    .withHeader("Retry-After", "1");
            conflict.initCause(running);
            throw conflict;
        }
    }

    /** Tells how far it is; false if it is to end. */
    boolean progress(ImportJob job) {
        return database.sql("update catalogue_import set checked = :checked, done = :done, total = :total,"
                                + " heartbeat_at = clock_timestamp() where id = :id and state = 'RUNNING'")
                        .param("checked", job.checked())
                        .param("done", job.done())
                        .param("total", job.total())
                        .param("id", job.id())
                        .update()
                == 1;
    }

    /** @throws CancellationException if it was ended meanwhile, so that the transaction around it is undone */
    void finish(ImportJob job, ImportReport report) {
        int changed = database.sql("update catalogue_import set state = 'DONE', checked = ?, done = ?, total = ?,"
                        + " ended_at = clock_timestamp(), report = ? where id = ? and state = 'RUNNING'")
                .params(
                        report.items(),
                        report.validated() ? 0 : report.items(),
                        report.items(),
                        mapper.writeValueAsString(report),
                        job.id())
                .update();
        if (changed == 0) {
            throw new CancellationException("import " + job.id() + " was ended");
        }
    }

    void fail(ImportJob job, Problem problem) {
        database.sql("update catalogue_import set state = 'FAILED', checked = :checked, done = 0, total = :total,"
                        + " ended_at = clock_timestamp(), problem = :problem where id = :id and state = 'RUNNING'")
                .param("checked", job.checked())
                .param("total", job.total())
                .param("problem", mapper.writeValueAsString(problem))
                .param("id", job.id())
                .update();
    }

    /** Nothing of it was written, since its instance stops. */
    void lose(ImportJob job) {
        database.sql("update catalogue_import set state = 'LOST', done = 0, ended_at = clock_timestamp()"
                        + " where id = ? and state = 'RUNNING'")
                .param(job.id())
                .update();
    }

    private void loseTheSilent() {
        database.sql("update catalogue_import set state = 'LOST', done = 0, ended_at = clock_timestamp()"
                        + " where state = 'RUNNING' and heartbeat_at < clock_timestamp() - make_interval(secs => ?)")
                .param(SILENCE.toSeconds())
                .update();
    }

    /** Ends one that runs; its state as it is now, empty if there is none. */
    Optional<ImportState> cancel(String id, String owner) {
        database.sql("update catalogue_import set state = 'CANCELLED', done = 0, ended_at = clock_timestamp()"
                        + " where id = ? and owner = ? and state = 'RUNNING'")
                .params(id, owner)
                .update();
        return find(id, owner).map(ImportAnswer::state);
    }

    Optional<ImportAnswer> find(String id, String owner) {
        loseTheSilent();
        return database.sql("select id, state, checked, done, total, started_at, ended_at, report, problem"
                        + " from catalogue_import where id = ? and owner = ?")
                .params(id, owner)
                .query((row, number) -> answer(row))
                .optional();
    }

    /** In the order in which they began. */
    List<ImportAnswer> all(String owner) {
        return database.sql("select id, state, checked, done, total, started_at, ended_at, report, problem"
                        + " from catalogue_import where owner = ? order by started_at, id")
                .param(owner)
                .query((row, number) -> answer(row))
                .list();
    }

    void deleteAll(String owner) {
        database.sql("delete from catalogue_import where owner = ?")
                .param(owner)
                .update();
    }

    private ImportAnswer answer(ResultSet row) throws SQLException {
        OffsetDateTime ended = row.getObject("ended_at", OffsetDateTime.class);
        return new ImportAnswer(
                row.getString("id"),
                ImportState.valueOf(row.getString("state")),
                row.getInt("checked"),
                row.getInt("done"),
                row.getObject("total", Integer.class),
                row.getObject("started_at", OffsetDateTime.class).toInstant(),
                ended == null ? null : ended.toInstant(),
                read(row.getString("report"), ImportReport.class),
                read(row.getString("problem"), Problem.class));
    }

    private <T> @Nullable T read(@Nullable String json, Class<T> type) {
        return json == null ? null : mapper.readValue(json, type);
    }
}
