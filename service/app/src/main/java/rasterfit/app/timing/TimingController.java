package rasterfit.app.timing;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.List;
import java.util.Map;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.answer.EngineVersion;
import rasterfit.app.answer.Items;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.identify.BroadcastClasses;
import rasterfit.timing.Cta861;
import rasterfit.timing.Dmt;

/** Lists the timings of a standard, makes timings by formula, and finds the one that was measured. */
@RestController
@Tag(name = "timings")
class TimingController {
    private static final String CTA_861 = "cta861";
    private static final String DMT = "dmt";
    private static final String BROADCAST = "broadcast";

    /** Computed once: the tables never change while the service runs. */
    private final Map<String, List<? extends ListedTiming>> byStandard = Map.of(
            CTA_861, Cta861.all().stream().map(PublishedTiming::of).toList(),
            DMT, Dmt.all().stream().map(PublishedTiming::of).toList(),
            BROADCAST, BroadcastClasses.all().stream().map(BroadcastTiming::of).toList());

    private final EngineVersion engineVersion;

    TimingController(EngineVersion engineVersion) {
        this.engineVersion = engineVersion;
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/v1/timings", produces = "application/json")
    @Operation(
            operationId = "listTimings",
            summary = "List the numbered video timings of a standard, or the classes of broadcast-derived timing")
    Items<ListedTiming> list(
            @Parameter(
                            description = "CTA-861-I, VESA DMT, or what derives from broadcast clocks",
                            schema = @Schema(allowableValues = {CTA_861, DMT, BROADCAST}))
                    @RequestParam
                    String standard) {
        List<? extends ListedTiming> timings = byStandard.get(standard);
        if (timings == null) {
            String message = "Known standards: " + CTA_861 + ", " + DMT + ", " + BROADCAST + ".";
            throw new ProblemException(
                    ProblemType.INVALID_PARAMETER, message, List.of(ProblemError.inParameter("standard", message)));
        }
        return new Items<>(List.copyOf(timings));
    }

    @Requires(Scope.READ)
    @PostMapping(path = "/v1/timings/generate", consumes = "application/json", produces = "application/json")
    @Operation(
            operationId = "generateTiming",
            summary = "Make a timing for a size and a rate by the formula of VESA CVT or GTF; nothing is stored")
    GeneratedTiming generate(@RequestBody FormulaBody wanted) {
        return FormulaReader.generate(engineVersion.value(), wanted);
    }

    @Requires(Scope.READ)
    @PostMapping(path = "/v1/timings/identify", consumes = "application/json", produces = "application/json")
    @Operation(
            operationId = "identifyTiming",
            summary = "Find the exact timing of a console from measured rates and counts; nothing is stored")
    IdentifiedTiming identify(@RequestBody MeasuredBody measured) {
        return MeasuredReader.identify(engineVersion.value(), measured);
    }
}
