package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.answer.Page;
import rasterfit.app.collection.CollectionService.Told;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.resource.MergePatch;
import rasterfit.app.resource.PageRequest;
import tools.jackson.databind.node.ObjectNode;

/** What stands in a collection: one kind of record for each section. */
@RestController
@RequestMapping("/v1/collections/{collection}/{section:items|connections|lag-readings|test-results|service-notes|due}")
@Tag(name = "collections")
class RecordController {
    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;

    private final CollectionService service;

    RecordController(CollectionService service) {
        this.service = service;
    }

    @Requires(Scope.READ)
    @GetMapping(produces = JSON)
    @Operation(
            operationId = "listRecords",
            summary = "List the records of one section by id; due work by day, without what is done")
    @ApiResponse(
            responseCode = "200",
            description = "A part of the list: items, and next if there is more",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    Page<ObjectNode> list(
            @PathVariable String collection,
            @PathVariable String section,
            @Parameter(description = "The day on which due work is looked at; today (UTC) if absent")
                    @RequestParam(required = false)
                    @DateTimeFormat(iso = DateTimeFormat.ISO.DATE)
                    @Nullable
                    LocalDate asOf,
            @RequestParam(defaultValue = "50") int size,
            @RequestParam(required = false) @Nullable String cursor) {
        Section of = section(section);
        if (asOf != null && !Days.holds(asOf)) {
            throw dayRefused(Days.WORDS);
        }
        PageRequest part = PageRequest.of(size, cursor);
        if (of == Section.DUE) {
            return service.due(collection, part, asOf);
        } else if (asOf != null) {
            throw dayRefused("Only due work is looked at on a day.");
        }
        return service.records(collection, of, part);
    }

    @Requires(Scope.WRITE)
    @PostMapping(consumes = JSON, produces = JSON)
    @RecordTaken
    @Operation(operationId = "createRecord", summary = "Create a record under its own id, or one made by the service")
    @ApiResponse(
            responseCode = "201",
            description = "The record, with its address and its revision as entity tag",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    ResponseEntity<ObjectNode> create(
            @PathVariable String collection,
            @PathVariable String section,
            @RequestHeader(name = IdempotentRequest.HEADER, required = false) @Nullable String idempotencyKey,
            @RequestBody ObjectNode document) {
        Section of = section(section);
        String address = "/v1/collections/" + collection + "/" + of.path();
        Told told = service.create(
                collection, of, document, new IdempotentRequest(idempotencyKey, "POST " + address, document));
        return CollectionController.written(told, address + "/" + told.id());
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}", produces = JSON)
    @Operation(operationId = "getRecord", summary = "Read one record")
    @RecordResponse
    ResponseEntity<ObjectNode> get(
            @PathVariable String collection,
            @PathVariable String section,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false) @Nullable String ifNoneMatch) {
        return CollectionController.read(service.record(collection, section(section), id), ifNoneMatch);
    }

    @Requires(Scope.WRITE)
    @PutMapping(path = "/{id}", consumes = JSON, produces = JSON)
    @RecordTaken
    @Operation(operationId = "putRecord", summary = "Create or replace one record")
    @ApiResponse(
            responseCode = "201",
            description = "The record is new",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    @RecordResponse
    ResponseEntity<ObjectNode> put(
            @PathVariable String collection,
            @PathVariable String section,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false) @Nullable String ifNoneMatch,
            @RequestBody ObjectNode document) {
        Section of = section(section);
        return CollectionController.written(
                service.put(collection, of, id, document, RecordTag.believed(ifMatch, ifNoneMatch)),
                "/v1/collections/" + collection + "/" + of.path() + "/" + id);
    }

    @Requires(Scope.WRITE)
    @PatchMapping(path = "/{id}", consumes = "application/merge-patch+json", produces = JSON)
    @Operation(operationId = "patchRecord", summary = "Change members of one record by JSON Merge Patch (RFC 7396)")
    @RecordResponse
    ResponseEntity<ObjectNode> patch(
            @PathVariable String collection,
            @PathVariable String section,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody ObjectNode patch) {
        return CollectionController.written(
                service.patch(
                        collection,
                        section(section),
                        id,
                        document -> MergePatch.apply(document, patch),
                        RecordTag.believed(ifMatch, null)),
                "");
    }

    @Requires(Scope.WRITE)
    @DeleteMapping("/{id}")
    @Operation(operationId = "deleteRecord", summary = "Delete one record; an item only if nothing names it")
    @ApiResponse(responseCode = "204", description = "It is deleted")
    ResponseEntity<Void> delete(
            @PathVariable String collection,
            @PathVariable String section,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        service.delete(collection, section(section), id, RecordTag.believed(ifMatch, null));
        return ResponseEntity.noContent().build();
    }

    private static ProblemException dayRefused(String message) {
        return new ProblemException(
                ProblemType.INVALID_PARAMETER, "asOf: " + message, List.of(ProblemError.inParameter("asOf", message)));
    }

    private static Section section(String path) {
        return Section.ofPath(path).orElseThrow();
    }
}
