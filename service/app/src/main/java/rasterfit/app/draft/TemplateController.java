package rasterfit.app.draft;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.answer.Items;
import rasterfit.app.problem.Problems;

/** Templates for a person's own gear. */
@RestController
@Tag(name = "templates")
class TemplateController {
    private static final String JSON = "application/json";

    private final TemplateDrafts drafts;

    TemplateController(TemplateDrafts drafts) {
        this.drafts = drafts;
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/v1/templates", produces = JSON)
    @Operation(operationId = "listTemplates", summary = "List the classes of device that can be described in a minute")
    Items<TemplateAnswer> list() {
        return new Items<>(Templates.ALL.stream().map(TemplateAnswer::of).toList());
    }

    @Requires(Scope.READ)
    @PostMapping(path = "/v1/templates/{id}/drafts", consumes = JSON, produces = JSON)
    @Operation(
            operationId = "draftFromTemplate",
            summary = "Make a whole gear document of a few answers; nothing is stored")
    DraftAnswer draft(@PathVariable String id, @RequestBody DraftRequestBody body) {
        Template template = Templates.find(id).orElseThrow(() -> Problems.notFound("template \"" + id + "\""));
        return drafts.make(template, body);
    }
}
