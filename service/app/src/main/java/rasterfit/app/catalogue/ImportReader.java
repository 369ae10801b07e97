package rasterfit.app.catalogue;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;

/** Takes a whole gear document apart into its items; all of them are valid, or none is given. */
@Component
class ImportReader {
    private final GearDocuments documents;
    private final ObjectMapper mapper;

    ImportReader(GearDocuments documents, ObjectMapper mapper) {
        this.documents = documents;
        this.mapper = mapper;
    }

    /** @throws rasterfit.app.problem.ProblemException with every fault of the document and its place */
    List<CatalogueStore.Imported> read(JsonNode tree) {
        try {
            GearReader.catalogue(mapper.treeToValue(tree, CatalogueBody.class), 0);
        } catch (JacksonException unreadable) {
            throw Problems.unreadable(unreadable);
        }
        List<CatalogueStore.Imported> items = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (JsonNode item : tree.path(kind.path())) {
                ItemKey key = new ItemKey(kind, item.path("id").asString());
                items.add(new CatalogueStore.Imported(key, documents.read(kind, (ObjectNode) item, key.id())));
            }
        }
        return items;
    }
}
