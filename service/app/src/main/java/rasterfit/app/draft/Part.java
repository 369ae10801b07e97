package rasterfit.app.draft;

import rasterfit.gear.Basis;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** One object of a document that is written, with the path of the provenance and the JSON Pointer that lead to it. */
public final class Part {
    private static final String MEASURED = "measured by whoever described it";

    private static final String ASSUMPTION = "assumption";

    private final Draft draft;
    private final ObjectNode node;
    private final String path;
    private final String pointer;

    Part(Draft draft, ObjectNode node, String path, String pointer) {
        this.draft = draft;
        this.node = node;
        this.path = path;
        this.pointer = pointer;
    }

    public Part object(String member) {
        return new Part(draft, node.putObject(member), path(member), pointer + "/" + member);
    }

    /** A new element of a list, which goes by its id. */
    public Part element(String list, String id) {
        ArrayNode elements = list(list);
        String place = pointer + "/" + list + "/" + elements.size();
        return new Part(draft, elements.addObject().put("id", id), path(list) + "/" + id, place);
    }

    /** A new element of a list without ids, which goes by its index. */
    public Part element(String list) {
        ArrayNode elements = list(list);
        String step = "/" + elements.size();
        return new Part(draft, elements.addObject(), path(list) + step, pointer + "/" + list + step);
    }

    /** What follows from the choice of the template, or is otherwise known. */
    public void set(String member, Object value) {
        node.set(member, DraftValue.of(value));
    }

    /** What is known and rests on something else than the rest of the document. */
    public void set(String member, Object value, Basis basis, String source) {
        set(member, value);
        draft.rests(path(member), basis, source, null);
    }

    /** What nobody said and would be too wide a guess for the engine. */
    public void assume(String member, Object value, String reason) {
        set(member, value);
        draft.assume(path(member), DraftValue.of(value), reason, ASSUMPTION);
    }

    /** A member that is better left out, with what the engine takes for it. */
    public void leave(String member, Object taken, String reason) {
        draft.leave(path(member), DraftValue.of(taken), reason);
    }

    /** The answer as it stands; nothing where nothing is known. */
    void answer(String member, Answer answer) {
        if (answer.isKnown()) {
            answer(member, answer, answer.value());
        }
    }

    /** A value that follows from an answer and rests on what the answer rests on. */
    void answer(String member, Answer answer, Object value) {
        JsonNode written = DraftValue.of(value);
        set(member, written);
        draft.asked(pointer + "/" + member, answer.ask());
        AskDefault otherwise = answer.ask().otherwise();
        if (!answer.isGiven() && otherwise != null) {
            draft.assume(path(member), written, otherwise.reason(), otherwise.source());
        } else if (answer.measured()) {
            draft.rests(path(member), Basis.MEASURED, MEASURED, null);
        }
    }

    private ArrayNode list(String member) {
        return node.get(member) instanceof ArrayNode known ? known : node.putArray(member);
    }

    private String path(String member) {
        return path.isEmpty() ? member : path + "/" + member;
    }
}
