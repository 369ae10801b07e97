package rasterfit.app.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DelegatingDataSource;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.context.RequestAttributeSecurityContextRepository;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemWriter;
import rasterfit.app.problem.ServedTest;

/** Tokens over their life, on a real database and a clock that is turned by hand. */
class TokensTest extends ServedTest {
    @Autowired
    javax.sql.DataSource dataSource;

    private final Time time = new Time();
    private Switch database;
    private Tokens tokens;
    private Tokens elsewhere;

    @BeforeEach
    void twoInstances() {
        database = new Switch(dataSource);
        TokenStore store = new TokenStore(JdbcClient.create(database));
        tokens = new Tokens(store, time, time::nanos);
        elsewhere = new Tokens(store, time, time::nanos);
    }

    @Test
    void aTokenHas256RandomBitsAndIsNeverGivenTwice() {
        Set<String> secrets = new HashSet<>();
        int[] ones = new int[256];
        int count = 400;
        for (int i = 0; i < count; i++) {
            String text = Secret.random().text();
            assertThat(text).matches("rft_[0-9a-f]{16}_[A-Za-z0-9_-]{43}");
            byte[] random = Base64.getUrlDecoder().decode(text.substring(21));
            assertThat(random).hasSize(32);
            assertThat(secrets.add(text)).isTrue();
            for (int bit = 0; bit < 256; bit++) {
                ones[bit] += (random[bit / 8] >> bit % 8) & 1;
            }
        }
        // Binomial with p = 1/2: 200 ± 10, so that 6 deviations are left by chance once in 500 million (times 256
        // bits).
        for (int bit = 0; bit < 256; bit++) {
            assertThat(ones[bit]).as("bit " + bit).isBetween(count / 2 - 60, count / 2 + 60);
        }
    }

    @Test
    void theHashIsSha256() {
        // FIPS 180-4, example "abc" (NIST CSRC, Cryptographic Standards and Guidelines: Example Values).
        assertThat(Secret.sha256("abc")).isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void aTokenHoldsUntilItExpires() {
        IssuedToken given = tokens.issue(
                "mira", "short", List.of(Scope.READ), time.instant().plusSeconds(30));
        assertThat(tokens.caller(given.secret())).isPresent();
        time.pass(Duration.ofSeconds(29));
        assertThat(tokens.caller(given.secret())).isPresent();
        // Also while it is still known from the last look.
        time.pass(Duration.ofSeconds(1));
        assertThat(tokens.caller(given.secret())).isEmpty();
    }

    @Test
    void aRevokedTokenIsRefusedHereAtOnceAndElsewhereWithinTenSeconds() {
        IssuedToken given = tokens.issue("mira", "lost", List.of(Scope.READ), null);
        assertThat(tokens.caller(given.secret())).isPresent();
        assertThat(elsewhere.caller(given.secret())).isPresent();
        tokens.revoke(given.token().id());
        assertThat(tokens.caller(given.secret())).isEmpty();
        time.pass(Duration.ofSeconds(10));
        assertThat(elsewhere.caller(given.secret())).isEmpty();
    }

    @Test
    void revokedTwiceAtTheSameTimeItIsRevokedOnce() throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(8);
        try {
            for (int round = 0; round < 20; round++) {
                IssuedToken given = tokens.issue("mira", "parallel", List.of(Scope.READ), null);
                String id = given.token().id();
                CountDownLatch together = new CountDownLatch(1);
                List<Callable<Instant>> tasks = new ArrayList<>();
                for (int i = 0; i < 8; i++) {
                    Tokens one = i % 2 == 0 ? tokens : elsewhere;
                    tasks.add(() -> {
                        together.await();
                        time.pass(Duration.ofMillis(1));
                        one.revoke(id);
                        assertThat(one.caller(given.secret())).isEmpty();
                        return one.get(id).revokedAt();
                    });
                }
                List<Future<Instant>> answers = tasks.stream().map(pool::submit).toList();
                together.countDown();
                Set<Instant> times = new HashSet<>();
                for (Future<Instant> answer : answers) {
                    times.add(answer.get());
                }
                assertThat(times).hasSize(1).doesNotContainNull();
            }
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void revokedWhileItIsUsedItIsRefusedFromThenOn() throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(4);
        try {
            for (int round = 0; round < 30; round++) {
                IssuedToken given = tokens.issue("mira", "busy", List.of(Scope.READ), null);
                CountDownLatch together = new CountDownLatch(1);
                List<Future<?>> users = new ArrayList<>();
                for (int i = 0; i < 3; i++) {
                    users.add(pool.submit(() -> {
                        together.await();
                        return tokens.caller(given.secret());
                    }));
                }
                together.countDown();
                tokens.revoke(given.token().id());
                for (Future<?> user : users) {
                    user.get();
                }
                assertThat(tokens.caller(given.secret())).isEmpty();
            }
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void aTokenThatDoesNotExistIsNotRevoked() {
        assertThatThrownBy(() -> tokens.revoke("0123456789abcdef")).isInstanceOf(ProblemException.class);
        assertThatThrownBy(() -> tokens.get("0123456789abcdef")).isInstanceOf(ProblemException.class);
    }

    @Test
    void theLastUseIsNotedOnceAMinuteWhicheverInstanceWasAsked() {
        IssuedToken given = tokens.issue("mira", "used", List.of(Scope.READ), null);
        String id = given.token().id();
        assertThat(tokens.get(id).lastUsedAt()).isNull();
        Instant first = time.instant();
        tokens.caller(given.secret());
        assertThat(tokens.get(id).lastUsedAt()).isEqualTo(first);
        time.pass(Duration.ofSeconds(59));
        tokens.caller(given.secret());
        elsewhere.caller(given.secret());
        assertThat(tokens.get(id).lastUsedAt()).isEqualTo(first);
        time.pass(Duration.ofSeconds(1));
        tokens.caller(given.secret());
        assertThat(tokens.get(id).lastUsedAt()).isEqualTo(first.plusSeconds(60));
    }

    @Test
    void whatIsNoTokenIsNotAUse() {
        IssuedToken given = tokens.issue("mira", "guessed", List.of(Scope.READ), null);
        String secret = given.secret();
        assertThat(tokens.caller(secret.substring(0, 21) + "A".repeat(43))).isEmpty();
        assertThat(tokens.get(given.token().id()).lastUsedAt()).isNull();
    }

    @Test
    void forTenSecondsATokenIsKnownWithoutTheDatabase() {
        IssuedToken given = tokens.issue("mira", "lasting", List.of(Scope.READ), null);
        assertThat(tokens.caller(given.secret())).isPresent();
        database.left = 0;
        time.pass(Duration.ofSeconds(9));
        assertThat(tokens.caller(given.secret())).isPresent();
        time.pass(Duration.ofSeconds(1));
        assertThatThrownBy(() -> tokens.caller(given.secret())).isInstanceOf(DataAccessException.class);
        database.left = Integer.MAX_VALUE;
        assertThat(tokens.caller(given.secret())).isPresent();
    }

    @Test
    void aUseThatCannotBeNotedFailsNoRequest() {
        IssuedToken given = tokens.issue("mira", "unnoted", List.of(Scope.READ), null);
        // One connection to look it up, none to write.
        database.left = 1;
        assertThat(tokens.caller(given.secret())).isPresent();
        database.left = Integer.MAX_VALUE;
        assertThat(tokens.get(given.token().id()).lastUsedAt()).isNull();
    }

    @Test
    void whileTheDatabaseIsAwayAnUnknownTokenIsAskedToComeBackAndTheConfiguredOneIsLetIn() throws Exception {
        String configured = "b3f1c09e77a24d58b3f1c09e77a24d58";
        BearerFilter filter = new BearerFilter(
                AccessMode.TOKENS,
                AdminToken.of(configured, "admin"),
                tokens,
                new RequestAttributeSecurityContextRepository(),
                new ProblemWriter());
        String secret =
                tokens.issue("mira", "waiting", List.of(Scope.READ), null).secret();
        database.left = 0;
        MockHttpServletResponse away = filtered(filter, secret);
        assertThat(away.getHeader("Retry-After")).isEqualTo("2");
        problem(away.getContentAsString(), 503, "unavailable");
        assertThat(filtered(filter, configured).getStatus()).isEqualTo(200);
    }

    private static MockHttpServletResponse filtered(BearerFilter filter, String secret) throws Exception {
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/v1/rules");
        request.addHeader("Authorization", "Bearer " + secret);
        MockHttpServletResponse response = new MockHttpServletResponse();
        try {
            filter.doFilter(request, response, new MockFilterChain());
        } finally {
            SecurityContextHolder.clearContext();
        }
        return response;
    }

    /** A clock and a ticker that go together. */
    private static final class Time extends Clock {
        private Instant now = Instant.parse("2027-03-01T12:00:00Z");

        synchronized void pass(Duration by) {
            now = now.plus(by);
        }

        synchronized long nanos() {
            return Duration.between(Instant.EPOCH, now).toNanos();
        }

        @Override
        public synchronized Instant instant() {
            return now;
        }

        @Override
        public java.time.ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(java.time.ZoneId zone) {
            throw new UnsupportedOperationException();
        }
    }

    /** A database that gives so many connections more. */
    private static final class Switch extends DelegatingDataSource {
        private int left = Integer.MAX_VALUE;

        Switch(javax.sql.DataSource real) {
            super(real);
        }

        @Override
        public Connection getConnection() throws SQLException {
            if (left == 0) {
                throw new SQLException("away");
            }
            if (left != Integer.MAX_VALUE) {
                left--;
            }
            return super.getConnection();
        }
    }
}
