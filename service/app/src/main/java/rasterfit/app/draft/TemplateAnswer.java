package rasterfit.app.draft;

import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;

/**
 * A template.
 *
 * @param makes the kind of gear
 * @param asks its questions
 */
record TemplateAnswer(
        String id,

        @Schema(allowableValues = {"displays", "converters", "links"})
        String makes,

        String summary,
        List<Ask> asks) {
    static TemplateAnswer of(Template template) {
        return new TemplateAnswer(template.id(), template.kind().path(), template.summary(), CommonAsks.of(template));
    }
}
