package rasterfit.app.collection;

import java.util.EnumSet;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;
import rasterfit.app.access.OwnerData;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;

/** Collections among all that is kept for an owner. */
@Component
class CollectionData implements OwnerData {
    private final Collections collections;
    private final Records records;
    private final RecordReader reader;

    CollectionData(Collections collections, Records records, RecordReader reader) {
        this.collections = collections;
        this.records = records;
        this.reader = reader;
    }

    @Override
    public String section() {
        return "collections";
    }

    @Override
    public JsonNode export(String owner) {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (StoredCollection stored : collections.ofOwner(owner, "", Limit.unlimited())) {
            all.add(reader.whole(
                    stored.document(), records.all(owner, stored.getId().id(), EnumSet.allOf(Section.class))));
        }
        return all;
    }

    /** Their records go with them. */
    @Override
    public void delete(String owner) {
        collections.deleteOfOwner(owner);
    }
}
