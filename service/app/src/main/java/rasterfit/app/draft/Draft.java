package rasterfit.app.draft;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A gear document while it is written, part by part; it remembers what was assumed, and on which answer each value rests. What
 * is neither assumed nor measured is declared.
 */
public final class Draft {
    private static final int LONGEST_ID = 100;
    private static final String CLASS_DEFAULT = "class default; ";

    private final ObjectNode item = DraftValue.NODES.objectNode();
    private final ArrayNode provenance = DraftValue.NODES.arrayNode();
    private final List<AssumedFact> assumed = new ArrayList<>();
    private final Map<String, String> askedAt = new LinkedHashMap<>();

    /**
     * Begins a document.
     *
     * @param id absent: made from the name, if that has any letters or digits of ASCII
     * @param source what is said of all that is declared
     */
    public Draft(@Nullable String id, String name, String source) {
        String given = id == null ? slug(name) : id;
        if (!given.isEmpty()) {
            item.put("id", given);
        }
        item.put("name", name);
        rests("", Basis.DECLARED, source, null);
    }

    /** The whole document. */
    public Part root() {
        return new Part(this, item, "", "");
    }

    /** The finished document. */
    public ObjectNode item() {
        item.set("provenance", provenance);
        return item;
    }

    /** In the order in which it was written. */
    public List<AssumedFact> assumed() {
        return List.copyOf(assumed);
    }

    /** Adds an entry to the provenance. */
    void rests(String of, Basis basis, String source, @Nullable String note) {
        ObjectNode entry = provenance.addObject().put("of", of).put("basis", basis.name());
        entry.put("source", source);
        if (note != null) {
            entry.put("note", note);
        }
    }

    /** @param source a document, {@code common practice}, or {@code assumption} */
    void assume(String of, JsonNode value, String reason, String source) {
        rests(of, Basis.ASSUMED, CLASS_DEFAULT + source, reason);
        assumed.add(new AssumedFact(of, value, true, reason));
    }

    void leave(String of, JsonNode value, String reason) {
        assumed.add(new AssumedFact(of, value, false, reason));
    }

    void asked(String pointer, Ask ask) {
        askedAt.put(pointer, ask.name());
    }

    /** The pointer into the answers that led to what stands at a pointer into the document. */
    Optional<String> answerAt(String pointer) {
        for (Map.Entry<String, String> asked : askedAt.entrySet()) {
            if (pointer.equals(asked.getKey()) || pointer.startsWith(asked.getKey() + "/")) {
                return Optional.of("/answers/" + asked.getValue()
                        + pointer.substring(asked.getKey().length()));
            }
        }
        return askedAt.entrySet().stream()
                .filter(asked -> asked.getKey().startsWith(pointer + "/"))
                .map(asked -> "/answers/" + asked.getValue())
                .findFirst();
    }

    private static String slug(String name) {
        String plain = Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-");
        String cut = plain.length() > LONGEST_ID ? plain.substring(0, LONGEST_ID) : plain;
        return cut.replaceAll("^-|-$", "");
    }
}
