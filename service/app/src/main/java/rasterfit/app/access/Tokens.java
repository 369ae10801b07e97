package rasterfit.app.access;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import com.github.benmanes.caffeine.cache.Ticker;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import rasterfit.app.problem.Problems;

/** Gives and takes tokens, and tells who sent one. */
@Component
public class Tokens {
    /**
     * How long a token is known without another look at the database (assumption): revoked on another instance it is
     * accepted here for as long, and as long does the service go on while the database is away.
     */
    static final Duration KNOWN_FOR = Duration.ofSeconds(10);

    /** How exact the time of the last use is (assumption); more often would make a write of every request. */
    static final Duration USE_NOTED_EVERY = Duration.ofMinutes(1);

    /** More are looked up again (assumption); keeps ids that someone makes up from filling the memory. */
    private static final int MOST_KNOWN = 10_000;

    private static final Logger LOG = LoggerFactory.getLogger(Tokens.class);

    private final TokenStore store;
    private final Clock clock;

    /** By id, ids that do not exist too. */
    private final Cache<String, Optional<TokenStore.StoredToken>> known;

    private final Cache<String, Instant> noted;

    @Autowired
    Tokens(TokenStore store, Clock clock) {
        this(store, clock, Ticker.systemTicker());
    }

    Tokens(TokenStore store, Clock clock, Ticker ticker) {
        this.store = store;
        this.clock = clock;
        this.known = Caffeine.newBuilder()
                .expireAfterWrite(KNOWN_FOR)
                .maximumSize(MOST_KNOWN)
                .ticker(ticker)
                .build();
        this.noted = Caffeine.newBuilder()
                .expireAfterWrite(USE_NOTED_EVERY)
                .maximumSize(MOST_KNOWN)
                .ticker(ticker)
                .build();
    }

    /**
     * Gives a new token; joins the transaction of the caller.
     *
     * @param name what its holder calls it
     * @param expiresAt absent if it holds until it is revoked
     */
    public IssuedToken issue(String owner, String name, List<Scope> scopes, @Nullable Instant expiresAt) {
        Secret secret = Secret.random();
        Instant expiry = expiresAt == null ? null : expiresAt.truncatedTo(ChronoUnit.MICROS);
        AccessToken token = new AccessToken(secret.id(), owner, name, scopes, now(), expiry, null, null);
        store.add(token, secret.sha256());
        return new IssuedToken(token, secret.text());
    }

    /** Empty for anything but a token that holds now. */
    Optional<Caller> caller(String sent) {
        Optional<AccessToken> token = Secret.read(sent)
                .flatMap(secret -> known.get(secret.id(), store::find)
                        .filter(kept -> Secret.equal(kept.sha256(), secret.sha256())))
                .map(TokenStore.StoredToken::token)
                .filter(found -> found.holdsAt(clock.instant()));
        token.ifPresent(this::noteUse);
        return token.map(found -> new Caller(found.owner(), EnumSet.copyOf(found.scopes()), found.id()));
    }

    /** A request does not fail because its time could not be written down. */
    private void noteUse(AccessToken token) {
        Instant now = now();
        if (noted.asMap().putIfAbsent(token.id(), now) != null) {
            return;
        }
        try {
            store.noteUse(token.id(), now);
        } catch (DataAccessException | TransactionException away) {
            LOG.warn("The use of token {} was not noted: {}", token.id(), away.getMessage());
        }
    }

    /** @throws rasterfit.app.problem.ProblemException 404 if there is none */
    public AccessToken get(String id) {
        return store.find(id)
                .map(TokenStore.StoredToken::token)
                .orElseThrow(() -> Problems.notFound("token \"" + id + "\""));
    }

    /**
     * By id.
     *
     * @param owner absent for those of every owner
     * @param after the id behind which the list begins; absent for its begin
     */
    public List<AccessToken> list(@Nullable String owner, @Nullable String after, int most) {
        return store.list(owner, after == null ? "" : after, most);
    }

    /**
     * From the moment this returns, nobody gets in with it here, and after {@link #KNOWN_FOR} nowhere. Not to be called in a
     * transaction, before whose end the old state could be looked up again.
     *
     * @throws rasterfit.app.problem.ProblemException 404 if there is none
     */
    public void revoke(String id) {
        if (!store.revoke(id, now())) {
            throw Problems.notFound("token \"" + id + "\"");
        }
        forget(id);
    }

    /** Waits for a look-up of the same token that is on its way, which may have seen the old state. */
    void forget(String id) {
        known.asMap().compute(id, (same, stale) -> null);
    }

    boolean hasAdmin() {
        return store.hasAdmin(clock.instant());
    }

    /** As exactly as the database keeps it. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
