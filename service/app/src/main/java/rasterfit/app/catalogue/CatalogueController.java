package rasterfit.app.catalogue;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.math.BigDecimal;
import java.net.URI;
import java.util.List;
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
import rasterfit.app.answer.Items;
import rasterfit.app.answer.Page;
import rasterfit.app.catalogue.CatalogueStore.WrittenItem;
import rasterfit.app.gear.FactWalk;
import rasterfit.app.idempotency.IdempotentRequest;
import rasterfit.app.resource.PageRequest;
import rasterfit.app.resource.Precondition;
import rasterfit.gear.Format;
import tools.jackson.databind.node.ObjectNode;

/** The gear of the shared catalogue, one address for each item. */
@RestController
@RequestMapping("/v1/catalogue/{kind:sources|displays|converters|links}")
@Tag(name = "catalogue")
class CatalogueController {
    private static final String JSON = MediaType.APPLICATION_JSON_VALUE;
    private static final String MERGE_PATCH = "application/merge-patch+json";

    private final CatalogueService service;
    private final CatalogueReader reader;

    CatalogueController(CatalogueService service, CatalogueReader reader) {
        this.service = service;
        this.reader = reader;
    }

    @Requires(Scope.READ)
    @GetMapping(produces = JSON)
    @Operation(operationId = "listGear", summary = "List gear of one kind by id, narrowed by what it can do")
    @GearResponse
    Page<ObjectNode> list(
            @PathVariable String kind,
            @Parameter(description = "A format that an input or output takes or gives")
                    @RequestParam(required = false)
                    @Nullable
                    Format format,
            @Parameter(description = "The connector of that input or output") @RequestParam(required = false) @Nullable
                    String connector,
            @Parameter(description = "A line rate in Hz that it takes or gives, where its limits are known")
                    @RequestParam(required = false)
                    @Nullable
                    BigDecimal lineRateHz,
            @Parameter(description = "The greatest price; currency is needed beside it")
                    @RequestParam(required = false)
                    @Nullable
                    BigDecimal maxPrice,
            @RequestParam(required = false) @Nullable String currency,
            @Parameter(description = "How many at most; 200 if more are asked for") @RequestParam(defaultValue = "50")
                    int size,
            @Parameter(description = "What the part before named as next") @RequestParam(required = false) @Nullable
                    String cursor) {
        return reader.list(
                new ItemSearch(kind(kind), format, connector, lineRateHz, maxPrice, currency),
                PageRequest.of(size, cursor));
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}", produces = JSON)
    @Operation(operationId = "getGear", summary = "Read one item, as it is written")
    @GearResponse
    ResponseEntity<ObjectNode> get(
            @PathVariable String kind,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false) @Nullable String ifNoneMatch) {
        CatalogueReader.Item item = reader.item(key(kind, id));
        if (ifNoneMatch != null && Precondition.matchesWeakly(ifNoneMatch, item.revision())) {
            return ResponseEntity.status(HttpStatus.NOT_MODIFIED)
                    .eTag(Precondition.tag(item.revision()))
                    .build();
        }
        return ResponseEntity.ok().eTag(Precondition.tag(item.revision())).body(item.document());
    }

    @Requires(Scope.CATALOGUE)
    @PutMapping(path = "/{id}", consumes = JSON, produces = JSON)
    @Operation(operationId = "putGear", summary = "Create or replace one item")
    @GearResponse
    @ApiResponse(
            responseCode = "201",
            description = "The gear is new",
            content = @Content(mediaType = JSON, schema = @Schema(type = "object")))
    ResponseEntity<ObjectNode> put(
            @PathVariable String kind,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestHeader(name = HttpHeaders.IF_NONE_MATCH, required = false) @Nullable String ifNoneMatch,
            @RequestBody ObjectNode document) {
        ItemKey key = key(kind, id);
        WrittenItem written = service.put(key, document, new Precondition(ifMatch, ifNoneMatch));
        return written.isNew() ? created(key, written) : ok(written);
    }

    @Requires(Scope.CATALOGUE)
    @PatchMapping(path = "/{id}", consumes = MERGE_PATCH, produces = JSON)
    @Operation(operationId = "patchGear", summary = "Change members of one item by JSON Merge Patch (RFC 7396)")
    @GearResponse
    ResponseEntity<ObjectNode> patch(
            @PathVariable String kind,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestBody ObjectNode patch) {
        return ok(service.patch(key(kind, id), patch, new Precondition(ifMatch, null)));
    }

    @Requires(Scope.CATALOGUE)
    @DeleteMapping("/{id}")
    @Operation(operationId = "deleteGear", summary = "Delete one item; its revisions stay")
    @ApiResponse(responseCode = "204", description = "It is deleted")
    ResponseEntity<Void> delete(
            @PathVariable String kind,
            @PathVariable String id,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch) {
        service.delete(key(kind, id), new Precondition(ifMatch, null));
        return ResponseEntity.noContent().build();
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}/facts", produces = JSON)
    @Operation(
            operationId = "listGearFacts",
            summary = "List every value of one item with its basis: measured, published, declared or assumed")
    ResponseEntity<Items<FactAnswer>> facts(@PathVariable String kind, @PathVariable String id) {
        CatalogueReader.Item item = reader.item(key(kind, id));
        List<FactAnswer> facts =
                FactWalk.of(item.document()).stream().map(FactAnswer::of).toList();
        return ResponseEntity.ok().eTag(Precondition.tag(item.revision())).body(new Items<>(facts));
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}/revisions", produces = JSON)
    @Operation(operationId = "listGearRevisions", summary = "List the changes of one item, newest first")
    Page<RevisionAnswer> revisions(
            @PathVariable String kind,
            @PathVariable String id,
            @RequestParam(defaultValue = "50") int size,
            @RequestParam(required = false) @Nullable String cursor) {
        return reader.revisions(key(kind, id), PageRequest.of(size, cursor));
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/{id}/revisions/{revision}", produces = JSON)
    @Operation(operationId = "getGearRevision", summary = "Read one item as it was")
    @GearResponse
    ResponseEntity<ObjectNode> revision(
            @PathVariable String kind, @PathVariable String id, @PathVariable long revision) {
        CatalogueReader.Item item = reader.revision(key(kind, id), revision);
        return ResponseEntity.ok().eTag(Precondition.tag(revision)).body(item.document());
    }

    @Requires(Scope.CATALOGUE)
    @PostMapping(path = "/{id}/revisions/{revision}/restore", produces = JSON)
    @Operation(operationId = "restoreGearRevision", summary = "Make one item what it was, as a new change")
    @GearResponse
    ResponseEntity<ObjectNode> restore(
            @PathVariable String kind,
            @PathVariable String id,
            @PathVariable long revision,
            @RequestHeader(name = HttpHeaders.IF_MATCH, required = false) @Nullable String ifMatch,
            @RequestHeader(name = IdempotentRequest.HEADER, required = false) @Nullable String idempotencyKey) {
        ItemKey key = key(kind, id);
        String operation = "POST " + location(key) + "/revisions/" + revision + "/restore";
        IdempotentRequest request = new IdempotentRequest(idempotencyKey, operation, "");
        return ok(service.restore(key, revision, new Precondition(ifMatch, null), request));
    }

    private ResponseEntity<ObjectNode> created(ItemKey key, WrittenItem written) {
        return ResponseEntity.created(URI.create(location(key)))
                .eTag(Precondition.tag(written.revision()))
                .body(reader.tree(written.document()));
    }

    private ResponseEntity<ObjectNode> ok(WrittenItem written) {
        return ResponseEntity.ok().eTag(Precondition.tag(written.revision())).body(reader.tree(written.document()));
    }

    private static String location(ItemKey key) {
        return "/v1/catalogue/" + key.kind().path() + "/" + key.id();
    }

    private static Kind kind(String path) {
        return Kind.ofPath(path).orElseThrow();
    }

    private static ItemKey key(String kind, String id) {
        return new ItemKey(kind(kind), id);
    }
}
