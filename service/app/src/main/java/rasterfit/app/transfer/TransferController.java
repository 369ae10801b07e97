package rasterfit.app.transfer;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.headers.Header;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.catalogue.ImportReport;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.resource.Precondition;

/** The whole catalogue in and out, as the one document or as a table for each kind. */
@RestController
@Tag(name = "catalogue")
class TransferController {
    /** Behind the revision in the tag of a table. */
    private static final String TABLE = "-csv";

    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;
    private static final String CSV = "text/csv";
    private static final MediaType CSV_UTF_8 = new MediaType("text", "csv", StandardCharsets.UTF_8);
    private static final String KINDS = "sources, displays, converters or links";

    private final ImportService imports;
    private final Exports exports;

    TransferController(ImportService imports, Exports exports) {
        this.imports = imports;
        this.exports = exports;
    }

    @Requires(Scope.CATALOGUE)
    @PostMapping(
            path = ImportService.PATH,
            consumes = {JSON, CSV},
            produces = JSON)
    @Operation(
            operationId = "importCatalogue",
            summary = "Write all items of a document or table as one change, or none",
            requestBody =
                    @io.swagger.v3.oas.annotations.parameters.RequestBody(
                            required = true,
                            content = {
                                @Content(mediaType = JSON, schema = @Schema(type = "object")),
                                @Content(mediaType = CSV, schema = @Schema(type = "string"))
                            }))
    @ApiResponse(
            responseCode = "200",
            description = "It is done, or checked",
            content = @Content(mediaType = JSON, schema = @Schema(implementation = ImportReport.class)))
    @ApiResponse(
            responseCode = "202",
            description = "It takes longer than a second; its status tells how far it is",
            headers = {
                @Header(name = "Location", description = "Of the status", schema = @Schema(type = "string")),
                @Header(
                        name = "Retry-After",
                        description = "Seconds to wait before looking",
                        schema = @Schema(type = "integer"))
            },
            content = @Content(mediaType = JSON, schema = @Schema(implementation = ImportAnswer.class)))
    ResponseEntity<Object> imports(
            HttpServletRequest request,
            @Parameter(hidden = true) @RequestHeader(HttpHeaders.CONTENT_TYPE) MediaType type,
            @Parameter(
                            description = "The kind of a table",
                            schema = @Schema(allowableValues = {"sources", "displays", "converters", "links"}))
                    @RequestParam(required = false)
                    @Nullable
                    String kind,
            @Parameter(description = "Check the document and write nothing") @RequestParam(defaultValue = "false")
                    boolean validate,
            @Parameter(
                            description =
                                    "The tag of the export that was edited; if anything has changed since, nothing is written")
                    @RequestHeader(name = HttpHeaders.IF_MATCH, required = false)
                    @Nullable
                    String ifMatch,
            @RequestHeader(name = IdempotentRequest.HEADER, required = false) @Nullable String idempotencyKey)
            throws IOException {
        boolean isTable = type.isCompatibleWith(CSV_UTF_8);
        Kind table = isTable ? tableKind(kind) : null;
        if (!isTable && kind != null) {
            throw parameter("Only a table is of one kind; the document says the kind of its items itself.");
        }
        inUtf8(type);
        ImportService.Outcome outcome = imports.begin(
                request.getInputStream(),
                table,
                validate,
                ifMatch == null ? null : ofCatalogue(ifMatch),
                idempotencyKey);
        ImportAnswer running = outcome.running();
        return running == null
                ? ResponseEntity.ok(outcome.report())
                : ResponseEntity.accepted()
                        .location(URI.create(ImportService.PATH + "/" + running.id()))
                        .header(HttpHeaders.RETRY_AFTER, "1")
                        .body(running);
    }

    @Requires(Scope.CATALOGUE)
    @GetMapping(path = ImportService.PATH + "/{id}", produces = JSON)
    @Operation(operationId = "getImport", summary = "Read how far an import is; kept for a day after its end")
    ResponseEntity<ImportAnswer> status(@PathVariable String id) {
        ImportAnswer status = imports.status(id);
        ResponseEntity.BodyBuilder answer = ResponseEntity.ok().header(HttpHeaders.CACHE_CONTROL, "no-store");
        if (status.state() == ImportState.RUNNING) {
            answer.header(HttpHeaders.RETRY_AFTER, "1");
        }
        return answer.body(status);
    }

    @Requires(Scope.CATALOGUE)
    @DeleteMapping(ImportService.PATH + "/{id}")
    @Operation(operationId = "cancelImport", summary = "End an import that runs; nothing of it is written")
    @ApiResponse(responseCode = "204", description = "It is ended, and nothing of it was written")
    ResponseEntity<Void> cancel(@PathVariable String id) {
        imports.cancel(id);
        return ResponseEntity.noContent().build();
    }

    @Requires(Scope.READ)
    @GetMapping(
            path = "/v1/catalogue/exports",
            produces = {JSON, CSV})
    @Operation(
            operationId = "exportCatalogue",
            summary = "Read the catalogue as one document, or all gear of one kind as a table, as of one moment")
    @ApiResponse(
            responseCode = "200",
            description = "The gear, with the revision of the catalogue as entity tag",
            content = {
                @Content(mediaType = JSON, schema = @Schema(type = "object")),
                @Content(mediaType = CSV, schema = @Schema(type = "string"))
            })
    ResponseEntity<byte[]> exports(
            @Parameter(
                            description = "Only gear of this kind; a table needs one",
                            schema = @Schema(allowableValues = {"sources", "displays", "converters", "links"}))
                    @RequestParam(required = false)
                    @Nullable
                    String kind,
            @Parameter(hidden = true) @RequestHeader(name = HttpHeaders.ACCEPT, defaultValue = "*/*") String accept) {
        MediaType wanted = preferred(accept);
        if (wanted.equals(CSV_UTF_8)) {
            Kind table = tableKind(kind);
            Exports.Text text = exports.table(table);
            ContentDisposition file = ContentDisposition.attachment()
                    .filename(table.path() + ".csv")
                    .build();
            return answer(text)
                    .eTag('"' + Long.toString(text.revision()) + TABLE + '"')
                    .contentType(CSV_UTF_8)
                    .header(HttpHeaders.CONTENT_DISPOSITION, file.toString())
                    .body(text.bytes());
        }
        Exports.Text text = exports.document(kind == null ? null : tableKind(kind));
        return answer(text).contentType(MediaType.APPLICATION_JSON).body(text.bytes());
    }

    private static ResponseEntity.BodyBuilder answer(Exports.Text text) {
        return ResponseEntity.ok().eTag(Precondition.tag(text.revision())).varyBy(HttpHeaders.ACCEPT);
    }

    /** A table has a tag of its own, which stands for the same state. */
    private static String ofCatalogue(String tags) {
        return tags.replace(TABLE + "\"", "\"");
    }

    /** JSON unless a table is liked better. */
    private static MediaType preferred(String accept) {
        List<MediaType> accepted = MediaType.parseMediaTypes(accept);
        return quality(accepted, CSV_UTF_8) > quality(accepted, MediaType.APPLICATION_JSON)
                ? CSV_UTF_8
                : MediaType.APPLICATION_JSON;
    }

    /** That of the most specific range that fits (RFC 9110 §12.5.1). */
    private static double quality(List<MediaType> accepted, MediaType offered) {
        return accepted.stream()
                .filter(range -> range.removeQualityValue().includes(offered))
                .max((one, other) -> Integer.compare(specificity(one), specificity(other)))
                .map(MediaType::getQualityValue)
                .orElse(0.0);
    }

    private static int specificity(MediaType range) {
        return range.isWildcardType() ? 0 : range.isWildcardSubtype() ? 1 : 2;
    }

    private static void inUtf8(MediaType type) {
        Charset charset = type.getCharset();
        if (charset != null && !charset.equals(StandardCharsets.UTF_8)) {
            throw new ProblemException(
                    ProblemType.UNSUPPORTED_MEDIA_TYPE, "Text is taken in UTF-8 only. Sent: " + charset + ".");
        }
    }

    private static Kind tableKind(@Nullable String path) {
        if (path == null) {
            throw parameter("A table is of one kind: " + KINDS + ".");
        }
        return Kind.ofPath(path)
                .orElseThrow(() -> parameter("Known values: "
                        + Arrays.stream(Kind.values()).map(Kind::path).collect(Collectors.joining(", "))
                        + "."));
    }

    private static ProblemException parameter(String message) {
        return new ProblemException(
                ProblemType.INVALID_PARAMETER, "kind: " + message, List.of(ProblemError.inParameter("kind", message)));
    }
}
