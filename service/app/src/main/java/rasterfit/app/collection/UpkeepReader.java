package rasterfit.app.collection;

import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.Range;
import rasterfit.upkeep.UpkeepWork;

/** Reads what was done to owned items and what comes. */
final class UpkeepReader {
    private static final Range MONTHS = Range.of("1", "1200", "months");

    private final Contents contents;

    UpkeepReader(Contents contents) {
        this.contents = contents;
    }

    void note(Place at, ServiceNoteBody body) {
        item(at, body.item());
        Days.check(at.member("on"), body.on());
        if (body.done() != null) {
            DueBody done = contents.due().get(body.done());
            if (done == null || !done.item().equals(body.item())) {
                at.member("done").invalid("The item has no due work with this id.");
            }
        }
        text(at, body.work(), body.text());
        if (body.cost() != null) {
            GearReader.priceAt(at.member("cost"), body.cost());
        }
    }

    void due(Place at, DueBody body) {
        item(at, body.item());
        text(at, body.work(), body.text());
        Days.check(at.member("dueOn"), body.dueOn());
        Days.check(at.member("lastDoneOn"), body.lastDoneOn());
        Integer months = at.member("everyMonths").optionalCount(body.everyMonths(), MONTHS);
        boolean isOnce = body.dueOn() != null;
        boolean recurs = months != null || body.lastDoneOn() != null;
        if (isOnce == recurs) {
            at.wrongForm("Work is due once, on dueOn, or again everyMonths after lastDoneOn.");
        } else if (recurs && body.lastDoneOn() == null) {
            at.member("lastDoneOn").missing("The months run from a day.");
        } else if (recurs && months == null && body.work().usualMonths() == null) {
            at.member("everyMonths").missing("This work has no usual interval.");
        }
    }

    private void item(Place at, String id) {
        if (!contents.items().containsKey(id)) {
            at.member("item").invalid("The collection has no item with this id.");
        }
    }

    private static void text(Place at, UpkeepWork work, @Nullable String text) {
        if (work == UpkeepWork.OTHER && text == null) {
            at.member("text").missing("What is to be done or was done has to be told where the work is OTHER.");
        }
        at.member("text").optionalText(text);
    }
}
