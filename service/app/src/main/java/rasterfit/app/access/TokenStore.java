package rasterfit.app.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The tokens in the database; plain statements, since each is one row that hardly changes. */
@Component
class TokenStore {
    private static final String COLUMNS = "select id, sha256, owner, name, array_to_string(scopes, ',') as scopes,"
            + " created_at, expires_at, revoked_at, last_used_at from access_token ";

    private final JdbcClient database;

    TokenStore(JdbcClient database) {
        this.database = database;
    }

    /** A token with what it is recognised by. */
    record StoredToken(AccessToken token, String sha256) {}

    void add(AccessToken token, String sha256) {
        database.sql("insert into access_token (id, sha256, owner, name, scopes, created_at, expires_at)"
                        + " values (?, ?, ?, ?, string_to_array(?, ','), ?, ?)")
                .params(Arrays.asList(
                        token.id(),
                        sha256,
                        token.owner(),
                        token.name(),
                        token.scopes().stream().map(Scope::name).collect(Collectors.joining(",")),
                        written(token.createdAt()),
                        token.expiresAt() == null ? null : written(token.expiresAt())))
                .update();
    }

    Optional<StoredToken> find(String id) {
        return database.sql(COLUMNS + "where id = ?")
                .param(id)
                .query((row, number) -> new StoredToken(read(row), row.getString("sha256")))
                .optional();
    }

    /** By id, behind one of them; of one owner or of all. */
    List<AccessToken> list(@Nullable String owner, String after, int most) {
        return database.sql(COLUMNS + "where id > ? and (cast(? as text) is null or owner = ?) order by id limit ?")
                .params(Arrays.asList(after, owner, owner, most))
                .query((row, number) -> read(row))
                .list();
    }

    /** Keeps the first time if it is revoked again; false if there is no such token. */
    boolean revoke(String id, Instant now) {
        return database.sql("update access_token set revoked_at = coalesce(revoked_at, ?) where id = ?")
                        .params(written(now), id)
                        .update()
                > 0;
    }

    /** Of several instances that note a use within one minute, the first writes. */
    void noteUse(String id, Instant now) {
        database.sql("update access_token set last_used_at = ? where id = ?"
                        + " and (last_used_at is null or last_used_at <= ?)")
                .params(written(now), id, written(now.minus(Tokens.USE_NOTED_EVERY)))
                .update();
    }

    /** The ids of the tokens that were deleted. */
    List<String> deleteOf(String owner) {
        return database.sql("delete from access_token where owner = ? returning id")
                .param(owner)
                .query(String.class)
                .list();
    }

    /** Whether there is a token with which others can be given. */
    boolean hasAdmin(Instant now) {
        return database.sql("select exists (select from access_token where 'ADMIN' = any (scopes)"
                        + " and revoked_at is null and (expires_at is null or expires_at > ?))")
                .param(written(now))
                .query(Boolean.class)
                .single();
    }

    private static AccessToken read(ResultSet row) throws SQLException {
        return new AccessToken(
                row.getString("id"),
                row.getString("owner"),
                row.getString("name"),
                Arrays.stream(row.getString("scopes").split(",", -1))
                        .map(Scope::valueOf)
                        .toList(),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                instant(row, "expires_at"),
                instant(row, "revoked_at"),
                instant(row, "last_used_at"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }

    private static OffsetDateTime written(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
