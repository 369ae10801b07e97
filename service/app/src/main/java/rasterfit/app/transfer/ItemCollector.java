package rasterfit.app.transfer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntConsumer;
import rasterfit.app.catalogue.BulkWrites;
import rasterfit.app.catalogue.CheckedItem;
import rasterfit.app.catalogue.ItemKey;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;
import tools.jackson.databind.node.ObjectNode;

/** Checks the items of a document one by one and keeps them, with what is wrong with any of them. */
final class ItemCollector {
    /** Most items in one document (assumption: a catalogue of everything that was ever made has fewer). */
    static final int MOST_ITEMS = 20_000;

    private final BulkWrites catalogue;
    private final IntConsumer checked;
    private final ImportFaults faults = new ImportFaults();
    private final List<CheckedItem> items = new ArrayList<>();
    private final Map<ItemKey, Long> lines = new HashMap<>();
    private int count;

    ItemCollector(BulkWrites catalogue, IntConsumer checked) {
        this.catalogue = catalogue;
        this.checked = checked;
    }

    ImportFaults faults() {
        return faults;
    }

    /**
     * Takes an item.
     *
     * @param pointer of the item in the document
     * @param line on which it begins
     * @throws ProblemException 422 if there are too many
     */
    void add(Kind kind, ObjectNode document, String pointer, long line) {
        count();
        try {
            CheckedItem item = catalogue.check(kind, document);
            items.add(item);
            Long before = lines.putIfAbsent(item.key(), line);
            if (before != null) {
                faults.add(
                        ProblemType.INVALID_VALUE,
                        ProblemError.at(pointer + "/id", "The item on line " + before + " has the same id."));
            }
        } catch (ProblemException faulty) {
            faults.add(faulty, pointer);
        }
        checked.accept(count);
    }

    /** Counts an item of which nothing can be checked. */
    void count() {
        count++;
        if (count > MOST_ITEMS) {
            throw Problems.outOfRange("", "A document holds at most " + MOST_ITEMS + " items.", "0.." + MOST_ITEMS);
        }
    }

    void throwIfFaulty(Function<List<ProblemError>, List<ProblemError>> place) {
        faults.throwIfAny(place);
    }

    List<CheckedItem> items() {
        return items;
    }
}
