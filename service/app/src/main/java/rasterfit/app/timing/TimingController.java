package rasterfit.app.timing;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.answer.Items;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.timing.Cta861;

/** Lists the timings of a standard. */
@RestController
@Tag(name = "timings")
class TimingController {
    private static final String CTA_861 = "cta861";

    /** Computed once: the table never changes while the service runs. */
    private final List<PublishedTiming> cta861 =
            Cta861.all().stream().map(PublishedTiming::of).toList();

    @GetMapping(path = "/v1/timings", produces = "application/json")
    @Operation(operationId = "listTimings", summary = "List the numbered video timings of a standard")
    Items<PublishedTiming> list(
            @Parameter(description = "The standard; CTA-861-I so far", schema = @Schema(allowableValues = CTA_861))
                    @RequestParam
                    String standard) {
        if (!standard.equals(CTA_861)) {
            String message = "Known standards: " + CTA_861 + ".";
            throw new ProblemException(
                    ProblemType.INVALID_PARAMETER, message, List.of(ProblemError.inParameter("standard", message)));
        }
        return new Items<>(cta861);
    }
}
