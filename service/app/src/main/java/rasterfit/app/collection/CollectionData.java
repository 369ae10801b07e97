package rasterfit.app.collection;

import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import rasterfit.app.access.OwnerData;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Collections among all that is kept for an owner. */
@Component
class CollectionData implements OwnerData {
    private final Collections collections;
    private final Records records;
    private final ObjectMapper mapper;

    CollectionData(Collections collections, Records records, ObjectMapper mapper) {
        this.collections = collections;
        this.records = records;
        this.mapper = mapper;
    }

    @Override
    public String section() {
        return "collections";
    }

    @Override
    public JsonNode export(String owner) {
        ArrayNode all = mapper.createArrayNode();
        for (StoredCollection stored : collections.ofOwner(owner, "", Limit.unlimited())) {
            ObjectNode document = (ObjectNode) mapper.readTree(stored.document());
            for (Section section : Section.values()) {
                document.putArray(section.path());
            }
            records.all(owner, stored.getId().id())
                    .forEach(text ->
                            ((ArrayNode) document.get(text.section().path())).add(mapper.readTree(text.document())));
            all.add(document);
        }
        return all;
    }

    /** Their records go with them. */
    @Override
    public void delete(String owner) {
        collections.deleteOfOwner(owner);
    }
}
