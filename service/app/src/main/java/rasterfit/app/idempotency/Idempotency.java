package rasterfit.app.idempotency;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HexFormat;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import rasterfit.app.access.Callers;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import tools.jackson.databind.ObjectMapper;

/**
 * Does what a request asks for once, however often the request is sent. The key and the answer are kept in the transaction
 * that stores what was asked for: either both are there or neither, and a request that failed can be sent again.
 */
@Component
public class Idempotency {
    /** How long a repetition is recognised (assumption). */
    static final Duration KEPT = Duration.ofHours(24);

    private final JdbcClient database;
    private final TransactionTemplate transaction;
    private final ObjectMapper mapper;
    private final Callers callers;
    private final Clock clock;

    Idempotency(
            JdbcClient database,
            PlatformTransactionManager transactions,
            ObjectMapper mapper,
            Callers callers,
            Clock clock) {
        this.database = database;
        this.transaction = new TransactionTemplate(transactions);
        this.mapper = mapper;
        this.callers = callers;
        this.clock = clock;
    }

    /**
     * Stores in a transaction and keeps the answer, or gives the answer that was kept. Without a key it only stores.
     *
     * @param store joins the transaction; what it throws ends it
     * @throws ProblemException 422 if the key was used for another request, 409 while the same one is being worked on
     */
    public <T> T once(IdempotentRequest request, Class<T> answer, Supplier<T> store) {
        return once(callers.current().owner(), request, answer, store);
    }

    /** The same for work that goes on when the request of its owner has been answered. */
    public <T> T once(String owner, IdempotentRequest request, Class<T> answer, Supplier<T> store) {
        T done = transaction.execute(status -> inTransaction(owner, request, answer, store));
        return Objects.requireNonNull(done);
    }

    /**
     * What was answered to this request before, for work that is not begun in vain.
     *
     * @throws ProblemException 422 if the key was used for another request
     */
    public <T> Optional<T> answered(String owner, IdempotentRequest request, Class<T> type) {
        String key = request.key();
        if (key == null) {
            return Optional.empty();
        }
        String digest = digest(request);
        return find(owner, key).map(kept -> {
            if (!kept.digest().equals(digest)) {
                throw new ProblemException(
                        ProblemType.INVALID_VALUE,
                        "This idempotency key was used for another request; a new request needs a new key.");
            }
            return mapper.readValue(kept.answer(), type);
        });
    }

    private <T> T inTransaction(String owner, IdempotentRequest request, Class<T> type, Supplier<T> store) {
        String key = request.key();
        if (key == null) {
            return store.get();
        }
        lock(owner, key);
        Optional<T> before = answered(owner, request, type);
        if (before.isPresent()) {
            return before.get();
        }
        T answer = store.get();
        keep(owner, key, digest(request), mapper.writeValueAsString(answer));
        return answer;
    }

    /** Held until the transaction ends, so that of two equal requests one stores. */
    private void lock(String owner, String key) {
        boolean isFree = database.sql("select pg_try_advisory_xact_lock(hashtextextended(?, 0))")
                .param(owner + "\n" + key)
                .query(Boolean.class)
                .single();
        if (!isFree) {
            throw new ProblemException(
                            ProblemType.CONFLICT, "A request with this idempotency key is still being worked on.")
                    .withHeader("Retry-After", "1");
        }
    }

    private record Kept(String digest, String answer) {}

    private Optional<Kept> find(String owner, String key) {
        return database.sql("select request_sha256, answer from idempotency_key"
                        + " where owner = ? and key = ? and created_at >= ?")
                .params(owner, key, oldest())
                .query((row, number) -> new Kept(row.getString(1), row.getString(2)))
                .optional();
    }

    private void keep(String owner, String key, String digest, String answer) {
        database.sql("delete from idempotency_key where created_at < ?")
                .param(oldest())
                .update();
        database.sql("insert into idempotency_key (owner, key, request_sha256, answer, created_at)"
                        + " values (?, ?, ?, ?, ?)")
                .params(owner, key, digest, answer, now())
                .update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    private OffsetDateTime oldest() {
        return now().minus(KEPT);
    }

    private String digest(IdempotentRequest request) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            sha.update(request.operation().getBytes(StandardCharsets.UTF_8));
            sha.update((byte) '\n');
            return HexFormat.of().formatHex(sha.digest(mapper.writeValueAsBytes(request.body())));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }
}
