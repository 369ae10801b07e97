package rasterfit.app.owner;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.time.Clock;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.AccessToken;
import rasterfit.app.access.IssuedToken;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.access.Tokens;
import rasterfit.app.answer.Page;
import rasterfit.app.idempotency.Idempotency;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.resource.PageRequest;

/** Tokens are given, listed and taken by whoever has the scope {@link Scope#ADMIN}, for every owner. */
@RestController
@RequestMapping("/v1/tokens")
@Requires(Scope.ADMIN)
@Tag(name = "tokens")
class TokenController {
    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;

    private final Tokens tokens;
    private final Idempotency idempotency;
    private final Clock clock;

    TokenController(Tokens tokens, Idempotency idempotency, Clock clock) {
        this.tokens = tokens;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @PostMapping(consumes = JSON, produces = JSON)
    @Operation(operationId = "createToken", summary = "Give a token to an owner; its secret is told this once")
    @ApiResponse(
            responseCode = "201",
            description = "The token is given",
            content = @Content(mediaType = JSON, schema = @Schema(implementation = IssuedToken.class)))
    ResponseEntity<IssuedToken> create(
            @RequestHeader(name = IdempotentRequest.HEADER, required = false) @Nullable String key,
            @RequestBody TokenRequestBody body) {
        TokenRequestBody.Wanted wanted = body.read(clock.instant());
        AtomicReference<@Nullable IssuedToken> issued = new AtomicReference<>();
        // What is kept for a repetition has no secret in it.
        AccessToken token =
                idempotency.once(new IdempotentRequest(key, "POST /v1/tokens", body), AccessToken.class, () -> {
                    IssuedToken given =
                            tokens.issue(wanted.owner(), wanted.name(), wanted.scopes(), wanted.expiresAt());
                    issued.set(given);
                    return given.token();
                });
        IssuedToken given = issued.get();
        if (given == null) {
            throw new ProblemException(
                    ProblemType.CONFLICT,
                    "This request was answered before, with the token " + token.id()
                            + "; its secret is not kept and cannot be told again. If it was lost, revoke that token and"
                            + " ask for another under a new key.");
        }
        return ResponseEntity.created(URI.create("/v1/tokens/" + token.id()))
                .cacheControl(CacheControl.noStore())
                .body(given);
    }

    @GetMapping(produces = JSON)
    @Operation(operationId = "listTokens", summary = "List tokens by id, revoked and expired ones too")
    Page<AccessToken> list(
            @Parameter(description = "Only those of one owner") @RequestParam(required = false) @Nullable String owner,
            @RequestParam(defaultValue = "50") int size,
            @RequestParam(required = false) @Nullable String cursor) {
        PageRequest page = PageRequest.of(size, cursor);
        return page.page(
                tokens.list(owner, page.after(), page.lookUp()), AccessToken::id, Function.<AccessToken>identity());
    }

    @GetMapping(path = "/{id}", produces = JSON)
    @Operation(operationId = "getToken", summary = "Read what is known of one token")
    AccessToken get(@PathVariable String id) {
        return tokens.get(id);
    }

    @DeleteMapping("/{id}")
    @Operation(operationId = "revokeToken", summary = "Revoke one token; it stays listed")
    @ApiResponse(responseCode = "204", description = "It is revoked, now or earlier")
    ResponseEntity<Void> revoke(@PathVariable String id) {
        tokens.revoke(id);
        return ResponseEntity.noContent().build();
    }
}
