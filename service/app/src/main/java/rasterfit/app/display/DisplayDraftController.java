package rasterfit.app.display;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;

/** Displays from what they say of themselves. */
@RestController
@Tag(name = "displays")
class DisplayDraftController {
    private final DisplayDrafts drafts;

    DisplayDraftController(DisplayDrafts drafts) {
        this.drafts = drafts;
    }

    @Requires(Scope.READ)
    @PostMapping(path = "/v1/displays/drafts", consumes = "application/json", produces = "application/json")
    @Operation(
            operationId = "draftDisplay",
            summary =
                    "Make a whole display document of the EDIDs of its ports, without serial numbers; nothing is stored")
    DisplayDraftAnswer draft(@RequestBody DisplayDraftBody body) {
        return drafts.make(body);
    }
}
