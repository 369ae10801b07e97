package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import tools.jackson.databind.JsonNode;

/** Lays out a written item as its single values, each with the entry of the provenance that holds for it. */
public final class FactWalk {
    /** What a document says without naming a basis. */
    private static final Basis NOT_STATED = Basis.DECLARED;

    private static final String PROVENANCE = "provenance";
    private static final String ID = "id";

    private final List<StatedFact> facts = new ArrayList<>();

    private FactWalk() {}

    /** All values in the order of the document; ids are no facts but steps of the paths. */
    public static List<StatedFact> of(JsonNode document) {
        FactWalk walk = new FactWalk();
        walk.add(document, List.of(), new Scope(List.of(), Provenance.ofStored(List.of())));
        return List.copyOf(walk.facts);
    }

    /** The object whose provenance holds; paths in it begin there. */
    private record Scope(List<String> at, Provenance provenance) {}

    private void add(JsonNode value, List<String> path, Scope outer) {
        if (value.isObject()) {
            Scope scope = value.has(PROVENANCE) ? new Scope(path, provenance(value.path(PROVENANCE))) : outer;
            value.properties().stream()
                    .filter(member -> !member.getKey().equals(PROVENANCE)
                            && !member.getKey().equals(ID))
                    .forEach(member -> add(member.getValue(), Provenance.path(path, member.getKey()), scope));
        } else if (value.isArray()) {
            for (int i = 0; i < value.size(); i++) {
                String step = value.get(i).path(ID).asString(Integer.toString(i));
                add(value.get(i), Provenance.path(path, step), outer);
            }
        } else {
            facts.add(fact(value, path, outer));
        }
    }

    private static StatedFact fact(JsonNode value, List<String> path, Scope scope) {
        int begin = scope.at().size();
        return scope.provenance()
                .find(path.subList(begin, path.size()))
                .map(entry -> new StatedFact(
                        path,
                        value,
                        entry.basis(),
                        Provenance.path(scope.at(), entry.path().toArray(String[]::new)),
                        entry.source(),
                        entry.note()))
                .orElseGet(() -> new StatedFact(path, value, NOT_STATED, null, null, null));
    }

    private static Provenance provenance(JsonNode entries) {
        List<ProvenanceBody> bodies = new ArrayList<>();
        for (JsonNode entry : entries) {
            bodies.add(new ProvenanceBody(
                    entry.path("of").asString(),
                    Basis.valueOf(entry.path("basis").asString()),
                    text(entry, "source"),
                    text(entry, "note")));
        }
        return Provenance.ofStored(bodies);
    }

    private static @Nullable String text(JsonNode entry, String member) {
        return entry.has(member) ? entry.path(member).asString() : null;
    }
}
