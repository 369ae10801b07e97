package rasterfit.app.resource;

import java.util.Map;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** JSON Merge Patch (RFC 7396 §2): null removes a member, an object is merged, anything else replaces. */
public final class MergePatch {
    private MergePatch() {}

    /** A new document; neither argument is changed. */
    public static ObjectNode apply(ObjectNode target, ObjectNode patch) {
        ObjectNode merged = target.deepCopy();
        for (Map.Entry<String, JsonNode> member : patch.properties()) {
            if (member.getValue().isNull()) {
                merged.remove(member.getKey());
            } else {
                merged.set(member.getKey(), merged(merged.get(member.getKey()), member.getValue()));
            }
        }
        return merged;
    }

    private static JsonNode merged(JsonNode target, JsonNode patch) {
        if (!(patch instanceof ObjectNode object)) {
            return patch;
        }
        return apply(target instanceof ObjectNode there ? there : object.objectNode(), object);
    }
}
