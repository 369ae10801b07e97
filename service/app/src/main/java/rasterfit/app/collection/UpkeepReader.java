package rasterfit.app.collection;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Predicate;
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

    /**
     * When the work is due next. What is due once is done when a note names it, and empty then: notes of the same work may be of
     * years ago. What recurs counts from the last such note, or from the last of the same work, on the same item.
     */
    Optional<LocalDate> next(String id, DueBody body) {
        LocalDate last = body.lastDoneOn();
        if (last == null) {
            return done(note -> id.equals(note.done())).isPresent()
                    ? Optional.empty()
                    : Optional.ofNullable(body.dueOn());
        }
        LocalDate done =
                done(note -> id.equals(note.done()) || isSameWork(note, body)).orElse(last);
        return Optional.of((done.isAfter(last) ? done : last).plusMonths(months(body)));
    }

    /** The day of the last note that says so. */
    private Optional<LocalDate> done(Predicate<ServiceNoteBody> says) {
        return contents.notes().values().stream()
                .filter(says)
                .map(ServiceNoteBody::on)
                .max(LocalDate::compareTo);
    }

    /** Whether two works that have no name are the same, their words do not tell. */
    private static boolean isSameWork(ServiceNoteBody note, DueBody due) {
        return due.work() != UpkeepWork.OTHER
                && note.work() == due.work()
                && note.item().equals(due.item());
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
