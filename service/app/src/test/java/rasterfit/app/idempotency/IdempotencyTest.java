package rasterfit.app.idempotency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import rasterfit.app.access.Caller;
import rasterfit.app.access.Callers;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.ServedTest;
import tools.jackson.databind.ObjectMapper;

/** What the IETF's draft on the header field Idempotency-Key (07, §2) asks for, on a real PostgreSQL server. */
class IdempotencyTest extends ServedTest {
    @Autowired
    Idempotency idempotency;

    @Autowired
    JdbcClient database;

    @Autowired
    PlatformTransactionManager transactions;

    @Autowired
    ObjectMapper mapper;

    record Answer(int number, String text) {}

    @BeforeEach
    void aPlaceToStore() {
        database.sql("create table if not exists stored_once (name text)").update();
        database.sql("delete from stored_once").update();
        database.sql("delete from idempotency_key").update();
    }

    @Test
    void aRepetitionGetsTheSameAnswerAndStoresNothing() {
        IdempotentRequest request = new IdempotentRequest("first", "POST /a", Map.of("x", 1));
        Answer first = idempotency.once(request, Answer.class, storing("a", new Answer(7, "ä")));
        Answer again = idempotency.once(request, Answer.class, storing("b", new Answer(8, "other")));
        assertThat(again).isEqualTo(first).isEqualTo(new Answer(7, "ä"));
        assertThat(stored()).isEqualTo(1);
    }

    @Test
    void withoutAKeyEveryRequestStores() {
        IdempotentRequest request = new IdempotentRequest(null, "POST /a", Map.of());
        idempotency.once(request, Answer.class, storing("a", new Answer(1, "")));
        idempotency.once(request, Answer.class, storing("a", new Answer(2, "")));
        assertThat(stored()).isEqualTo(2);
        assertThat(keys()).isZero();
    }

    @Test
    void aKeyStandsForOneRequestOnly() {
        idempotency.once(new IdempotentRequest("k", "POST /a", Map.of("x", 1)), Answer.class, storing("a", answer()));
        for (IdempotentRequest other : new IdempotentRequest[] {
            new IdempotentRequest("k", "POST /a", Map.of("x", 2)), new IdempotentRequest("k", "POST /b", Map.of("x", 1))
        }) {
            assertThatThrownBy(() -> idempotency.once(other, Answer.class, storing("b", answer())))
                    .isInstanceOfSatisfying(
                            ProblemException.class,
                            problem -> assertThat(problem.type()).isEqualTo(ProblemType.INVALID_VALUE));
        }
        assertThat(stored()).isEqualTo(1);
    }

    @Test
    void whatFailedLeavesNothingAndCanBeTriedAgain() {
        IdempotentRequest request = new IdempotentRequest("k", "POST /a", Map.of());
        assertThatThrownBy(() -> idempotency.once(request, Answer.class, () -> {
                    assertThat(storing("half", answer()).get()).isNotNull();
                    throw new IllegalStateException("in the middle");
                }))
                .hasMessage("in the middle");
        assertThat(stored()).isZero();
        assertThat(keys()).isZero();
        idempotency.once(request, Answer.class, storing("whole", answer()));
        assertThat(stored()).isEqualTo(1);
    }

    @Test
    void whileTheFirstIsBeingWorkedOnTheSecondIsTurnedAway() throws Exception {
        IdempotentRequest request = new IdempotentRequest("k", "POST /a", Map.of());
        CountDownLatch isStoring = new CountDownLatch(1);
        CountDownLatch mayEnd = new CountDownLatch(1);
        ExecutorService other = Executors.newSingleThreadExecutor();
        try {
            Future<Answer> first = other.submit(() -> idempotency.once(request, Answer.class, () -> {
                isStoring.countDown();
                await(mayEnd);
                return storing("a", answer()).get();
            }));
            await(isStoring);
            assertThatThrownBy(() -> idempotency.once(request, Answer.class, storing("b", answer())))
                    .isInstanceOfSatisfying(ProblemException.class, problem -> {
                        assertThat(problem.type()).isEqualTo(ProblemType.CONFLICT);
                        assertThat(problem.headers()).containsKey("Retry-After");
                    });
            mayEnd.countDown();
            Answer done = first.get(30, TimeUnit.SECONDS);
            assertThat(idempotency.once(request, Answer.class, storing("c", answer())))
                    .isEqualTo(done);
            assertThat(stored()).isEqualTo(1);
        } finally {
            mayEnd.countDown();
            other.shutdownNow();
        }
    }

    @Test
    void anotherOwnersKeyIsAnotherKey() {
        IdempotentRequest request = new IdempotentRequest("k", "POST /a", Map.of());
        idempotency.once(request, Answer.class, storing("a", new Answer(1, "mine")));
        Answer other =
                of("someone-else", Instant.now()).once(request, Answer.class, storing("b", new Answer(2, "theirs")));
        assertThat(other.text()).isEqualTo("theirs");
        assertThat(stored()).isEqualTo(2);
    }

    @Test
    void aKeyIsForgottenAfterItsTime() {
        IdempotentRequest request = new IdempotentRequest("k", "POST /a", Map.of());
        Instant now = Instant.parse("2026-03-01T00:00:00Z");
        of("late", now).once(request, Answer.class, storing("a", new Answer(1, "")));
        Instant justBefore = now.plus(Idempotency.KEPT).minusSeconds(1);
        assertThat(of("late", justBefore)
                        .once(request, Answer.class, storing("b", new Answer(2, "")))
                        .number())
                .isEqualTo(1);
        Instant after = now.plus(Idempotency.KEPT).plusSeconds(1);
        assertThat(of("late", after)
                        .once(request, Answer.class, storing("c", new Answer(3, "")))
                        .number())
                .isEqualTo(3);
        assertThat(keys()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "with space", "ümlaut", "tab\t"})
    void aKeyIsVisibleAscii(String key) {
        assertThatThrownBy(() -> new IdempotentRequest(key, "POST /a", ""))
                .isInstanceOfSatisfying(
                        ProblemException.class,
                        problem -> assertThat(problem.type()).isEqualTo(ProblemType.INVALID_PARAMETER));
        assertThatThrownBy(() -> new IdempotentRequest("k".repeat(256), "POST /a", ""))
                .isInstanceOf(ProblemException.class);
    }

    private Idempotency of(String owner, Instant now) {
        Callers callers = () -> new Caller(owner, Caller.LOCAL.scopes());
        return new Idempotency(database, transactions, mapper, callers, Clock.fixed(now, ZoneOffset.UTC));
    }

    private Supplier<Answer> storing(String name, Answer answer) {
        return () -> {
            database.sql("insert into stored_once values (?)").param(name).update();
            return answer;
        };
    }

    private static Answer answer() {
        return new Answer(1, "done");
    }

    private long stored() {
        return database.sql("select count(*) from stored_once")
                .query(Long.class)
                .single();
    }

    private long keys() {
        return database.sql("select count(*) from idempotency_key")
                .query(Long.class)
                .single();
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(30, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException interrupted) {
            throw new AssertionError(interrupted);
        }
    }
}
