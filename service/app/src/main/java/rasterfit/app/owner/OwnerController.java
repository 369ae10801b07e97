package rasterfit.app.owner;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Callers;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;

/** The owner who is calling, and all that is kept for them. */
@RestController
@RequestMapping("/v1/owner")
@Tag(name = "owner")
class OwnerController {
    /** A header field and no member of a body: DELETE has none (RFC 9110 §9.3.5). */
    private static final String CONFIRMATION = "Confirm-Owner";

    private final Owners owners;
    private final Callers callers;

    OwnerController(Owners owners, Callers callers) {
        this.owners = owners;
        this.callers = callers;
    }

    @Requires(Scope.READ)
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(operationId = "getOwner", summary = "Read who is calling and what the token allows")
    OwnerAnswer owner() {
        return OwnerAnswer.of(callers.current());
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/export", produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(operationId = "exportOwner", summary = "Read everything that is kept for the caller, as of one moment")
    ResponseEntity<OwnerExport> export() {
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(owners.export(callers.current().owner()));
    }

    @Requires(Scope.WRITE)
    @DeleteMapping
    @Operation(operationId = "deleteOwner", summary = "Delete everything that is kept for the caller, tokens included")
    @ApiResponse(responseCode = "204", description = "It is deleted")
    ResponseEntity<Void> delete(
            @Parameter(description = "The caller's own name, so that nothing is deleted by mistake")
                    @RequestHeader(CONFIRMATION)
                    String confirmation) {
        String owner = callers.current().owner();
        if (!confirmation.equals(owner)) {
            String message = "To delete everything of " + owner + ", give that name here.";
            throw new ProblemException(
                    ProblemType.INVALID_VALUE,
                    CONFIRMATION + ": " + message,
                    List.of(ProblemError.inParameter(CONFIRMATION, message)));
        }
        owners.delete(owner);
        return ResponseEntity.noContent().build();
    }
}
