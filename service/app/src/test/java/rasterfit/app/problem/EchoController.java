package rasterfit.app.problem;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import tools.jackson.databind.JsonNode;

/** Answers with what it read, so that the reading of requests can be tested apart from any one endpoint. */
@TestComponent
@RestController
@RequestMapping("/echo")
@Requires(Scope.READ)
class EchoController {

    enum Scan {
        PROGRESSIVE,
        INTERLACED;

        @Override
        public String toString() {
            return "for people only";
        }
    }

    record Mode(
            @Nullable String name,
            @Min(1) @Max(1000) int lines,
            @Nullable Scan scan,
            @Nullable Ratio ratio) {}

    /** A value that checks itself in its constructor, as the engine's do. */
    record Ratio(long numerator, long denominator) {
        Ratio {
            if (denominator == 0) {
                throw new IllegalArgumentException("the denominator must not be zero");
            }
        }
    }

    record Named(String name) {
        Named {
            Objects.requireNonNull(name, "name");
        }
    }

    record Careless(String name) {
        Careless {
            name = name.strip();
        }
    }

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonSubTypes({
        @JsonSubTypes.Type(value = Fixed.class, name = "FIXED"),
        @JsonSubTypes.Type(value = Free.class, name = "FREE")
    })
    sealed interface Rate permits Fixed, Free {}

    record Fixed(int hertz) implements Rate {}

    record Free(@Nullable String note) implements Rate {}

    record Source(@Valid @NotNull @Size(min = 1, max = 3) List<Mode> modes) {}

    record Body(
            @Nullable String text,
            @Nullable Boolean on,
            @Nullable Integer count,
            @Nullable Long total,
            @Nullable Double share,
            @Nullable BigDecimal amount,
            @Nullable Scan scan,
            @Nullable Rate rate,
            @Nullable Named named,
            @Nullable Careless careless,
            @Nullable Map<Scan, Double> weights,
            @Nullable List<String> tags,
            @Valid @Nullable Source source) {}

    @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE, produces = MediaType.APPLICATION_JSON_VALUE)
    Body echo(@Valid @RequestBody Body body) {
        return body;
    }

    @PostMapping(path = "/bytes", consumes = MediaType.APPLICATION_OCTET_STREAM_VALUE)
    Map<String, Integer> count(@RequestBody byte[] body) {
        return Map.of("bytes", body.length);
    }

    @PostMapping(path = "/list", consumes = MediaType.APPLICATION_JSON_VALUE)
    int list(@RequestBody List<@Valid Mode> modes) {
        return modes.size();
    }

    @PostMapping(path = "/tree", consumes = MediaType.APPLICATION_JSON_VALUE)
    JsonNode tree(@RequestBody JsonNode body) {
        return body;
    }

    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    Map<String, Object> get(
            @RequestParam(defaultValue = "5") @Min(1) @Max(50) int top, @RequestParam("order") Optional<Scan> scan) {
        return Map.of("top", top, "scan", scan.map(Scan::name).orElse("none"));
    }

    @GetMapping("/needed")
    String needed(@RequestParam String name) {
        return name;
    }

    @GetMapping("/long")
    Map<String, String> longText() {
        return Map.of("text", "line ".repeat(1000));
    }

    @GetMapping("/things/{id}")
    String thing(@PathVariable String id) {
        throw Problems.notFound("thing \"" + id + "\"");
    }

    @GetMapping("/defect")
    String defect() {
        throw new IllegalStateException("secret of rasterfit.app.problem.EchoController");
    }

    @GetMapping("/busy")
    String busy() {
        throw Problems.unavailable("All workers are busy.", java.time.Duration.ofMillis(1500));
    }
}
