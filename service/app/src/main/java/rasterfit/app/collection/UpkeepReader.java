package rasterfit.app.collection;

import java.time.LocalDate;
import java.util.Optional;
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
        text(at, body.work(), body.text());
        if (body.cost() != null) {
            GearReader.priceAt(at.member("cost"), body.cost());
        }
    }

    void due(Place at, DueBody body) {
        item(at, body.item());
        text(at, body.work(), body.text());
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

    /**
     * When the work is due next: empty where it was due once and has been done. A service note of the same work on the same
     * item counts as done.
     */
    Optional<LocalDate> next(DueBody body) {
        LocalDate done = contents.notes().values().stream()
                .filter(note -> note.item().equals(body.item()) && note.work() == body.work())
                .filter(note -> body.work() != UpkeepWork.OTHER
                        || String.valueOf(note.text()).equals(body.text()))
                .map(ServiceNoteBody::on)
                .max(LocalDate::compareTo)
                .orElse(LocalDate.MIN);
        LocalDate last = body.lastDoneOn();
        if (last == null) {
            LocalDate dueOn = body.dueOn();
            return dueOn == null || !done.isEqual(LocalDate.MIN) ? Optional.empty() : Optional.of(dueOn);
        }
        return Optional.of((done.isAfter(last) ? done : last).plusMonths(months(body)));
    }

    private static long months(DueBody body) {
        if (body.everyMonths() != null) {
            return body.everyMonths().longValueExact();
        }
        Integer usual = body.work().usualMonths();
        return usual == null ? 0 : usual;
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
