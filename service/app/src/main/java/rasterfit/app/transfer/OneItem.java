package rasterfit.app.transfer;

import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.Problems;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.util.JsonParserDelegate;

/** Reads one item of a document as long as it has no more parts than one that is sent alone could have. */
final class OneItem extends JsonParserDelegate {
    /** Names, values, and beginnings and ends of lists and objects (assumption: what a body of 1 MiB has at most, by half). */
    static final int MOST_PARTS = 200_000;

    private final String pointer;
    private int parts;

    OneItem(JsonParser parser, String pointer) {
        super(parser);
        this.pointer = pointer;
    }

    @Override
    public JsonToken nextToken() {
        count();
        return super.nextToken();
    }

    @Override
    public @Nullable String nextName() {
        count();
        return super.nextName();
    }

    private void count() {
        parts++;
        if (parts > MOST_PARTS) {
            throw Problems.outOfRange(
                    pointer, "An item has at most " + MOST_PARTS + " names and values.", "1.." + MOST_PARTS);
        }
    }
}
