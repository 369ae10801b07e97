package rasterfit.app.catalogue;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.access.Requires;
import rasterfit.app.access.Scope;
import rasterfit.app.resource.Precondition;
import tools.jackson.databind.node.ObjectNode;

/** The whole catalogue in and out, as the one document. */
@RestController
@Tag(name = "catalogue")
class TransferController {
    private final CatalogueService service;
    private final CatalogueReader reader;

    TransferController(CatalogueService service, CatalogueReader reader) {
        this.service = service;
        this.reader = reader;
    }

    @Requires(Scope.CATALOGUE)
    @PostMapping(
            path = "/v1/catalogue/imports",
            consumes = MediaType.APPLICATION_JSON_VALUE,
            produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(operationId = "importCatalogue", summary = "Write all items of a document as one change, or none")
    ImportReport imports(
            @Parameter(description = "Check the document and write nothing") @RequestParam(defaultValue = "false")
                    boolean validate,
            @RequestBody ObjectNode document) {
        return service.importAll(document, validate);
    }

    @Requires(Scope.READ)
    @GetMapping(path = "/v1/catalogue/exports", produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(operationId = "exportCatalogue", summary = "Read the whole catalogue as one document, as of one moment")
    @GearResponse
    ResponseEntity<ObjectNode> exports() {
        CatalogueReader.Item all = reader.all();
        return ResponseEntity.ok().eTag(Precondition.tag(all.revision())).body(all.document());
    }
}
