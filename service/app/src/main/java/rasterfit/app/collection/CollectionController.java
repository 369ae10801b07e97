package rasterfit.app.collection;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
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
import rasterfit.app.resource.MergePatch;
import rasterfit.app.resource.PageRequest;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/** The collections of the caller. */
@RestController
@RequestMapping("/v1/collections")
@Tag(name = "collections")
class CollectionController {
    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;

    private final CollectionService service;

    CollectionController(CollectionService service) {
        this.service = service;
    }

    @Requires(Scope.READ)
    @GetMapping(produces = JSON)
    @Operation(operationId = "listCollections", summary = "List the caller's own collections by id")
    @ApiResponse(
            responseCode = "200",
            description = "A part of the list: items, and next if there is more",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    Page<ObjectNode> list(
            @RequestParam(defaultValue = "50") int size, @RequestParam(required = false) @Nullable String cursor) {
        return service.collections(PageRequest.of(size, cursor));
    }

    @Requires(Scope.WRITE)
    @PostMapping(consumes = JSON, produces = JSON)
    @Operation(
            operationId = "createCollection",
            summary = "Create a collection under its own id, or one made by the service")
    @ApiResponse(
            responseCode = "201",
            description = "The collection, with its address and its revision as entity tag",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    ResponseEntity<ObjectNode> create(
            @RequestHeader(name = IdempotentRequest.HEADER, required = false) @Nullable String idempotencyKey,
            @RequestBody ObjectNode document) {
        Told told = service.create(document, new IdempotentRequest(idempotencyKey, "POST /v1/collections", document));
        return written(told, "/v1/collections/" + told.id());
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}", produces = JSON)
    @Operation(operationId = "getCollection", summary = "Read one collection by itself")
    @CollectionResponse
    ResponseEntity<ObjectNode> get(
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false) @Nullable String ifNoneMatch) {
        return read(service.collection(id), ifNoneMatch);
    }

    @Requires(Scope.WRITE)
    @PutMapping(path = "/{id}", consumes = JSON, produces = JSON)
    @Operation(operationId = "putCollection", summary = "Create or rename one collection")
    @CollectionResponse
    @ApiResponse(
            responseCode = "201",
            description = "The collection is new",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    ResponseEntity<ObjectNode> put(
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false) @Nullable String ifNoneMatch,
            @RequestBody ObjectNode document) {
        Told told = service.put(id, document, new Precondition(ifMatch, ifNoneMatch));
        return written(told, "/v1/collections/" + id);
    }

    @Requires(Scope.WRITE)
    @PatchMapping(path = "/{id}", consumes = "application/merge-patch+json", produces = JSON)
    @Operation(
            operationId = "patchCollection",
            summary = "Change members of one collection by JSON Merge Patch (RFC 7396)")
    @CollectionResponse
    ResponseEntity<ObjectNode> patch(
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody ObjectNode patch) {
        Precondition precondition = new Precondition(ifMatch, null);
        return written(service.patch(id, document -> MergePatch.apply(document, patch), precondition), "");
    }

    @Requires(Scope.WRITE)
    @DeleteMapping("/{id}")
    @Operation(operationId = "deleteCollection", summary = "Delete one collection with everything in it")
    @ApiResponse(responseCode = "204", description = "It is deleted")
    ResponseEntity<Void> delete(
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        service.delete(id, new Precondition(ifMatch, null));
        return ResponseEntity.noContent().build();
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}/export", produces = JSON)
    @Operation(operationId = "exportCollection", summary = "Read one collection and everything in it as one document")
    @ApiResponse(
            responseCode = "200",
            description = "The collection with one array for each section",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    ResponseEntity<ObjectNode> export(@PathVariable String id) {
        return ResponseEntity.ok(service.export(id));
    }

    static ResponseEntity<ObjectNode> read(Told told, @Nullable String ifNoneMatch) {
        if (ifNoneMatch != null && RecordTag.isAmong(ifNoneMatch, told.tag())) {
            return ResponseEntity.status(HttpStatus.NOT_MODIFIED)
                    .eTag(told.tag())
                    .build();
        }
        return ResponseEntity.ok().eTag(told.tag()).body(told.document());
    }

    static ResponseEntity<ObjectNode> written(Told told, String location) {
        String tag = told.tag();
        return told.isNew()
                ? ResponseEntity.created(URI.create(location)).eTag(tag).body(told.document())
                : ResponseEntity.ok().eTag(tag).body(told.document());
    }
}
