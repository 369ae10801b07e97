package rasterfit.app.match;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;

/** Matches a console to a display. */
@RestController
@Tag(name = "matches")
class MatchController {
    private final MatchService service;

    MatchController(MatchService service) {
        this.service = service;
    }

    @Requires(Scope.READ)
    @PostMapping(path = "/v1/matches", consumes = "application/json", produces = "application/json")
    @Operation(
            operationId = "match",
            summary = "Match a console to a display: ranked, explained setups; nothing is stored")
    MatchAnswer match(
            @RequestBody MatchRequestBody request,
            @Parameter(
                            description =
                                    "A change of the catalogue that has to be known, so that a client matches with what it wrote")
                    @RequestParam(defaultValue = "0")
                    long minCatalogueRevision) {
        return service.match(request, minCatalogueRevision);
    }
}
