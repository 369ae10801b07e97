package rasterfit.app.collection;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.upkeep.UpkeepWork;

/** When work was done last, by the service notes of a collection. */
final class DoneWork {
    /** By the id of the due work that notes name. */
    private final Map<String, LocalDate> named = new HashMap<>();

    private final Map<ItemWork, LocalDate> done = new HashMap<>();

    private record ItemWork(String item, UpkeepWork work) {}

    DoneWork(Contents contents) {
        for (ServiceNoteBody note : contents.notes().values()) {
            done.merge(new ItemWork(note.item(), note.work()), note.on(), DoneWork::later);
            if (note.done() != null) {
                named.merge(note.done(), note.on(), DoneWork::later);
            }
        }
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    /**
     * When work is due next. What is due once is done when a note names it, and empty then: notes of the same work may be of
     * years ago. What recurs counts from the last such note, or from the last of the same work, on the same item.
     */
    Optional<LocalDate> next(String id, DueBody body) {
        LocalDate begin = body.lastDoneOn();
        if (begin == null) {
            return named.containsKey(id) ? Optional.empty() : Optional.ofNullable(body.dueOn());
        }
        LocalDate last = Stream.of(Optional.of(begin), Optional.ofNullable(named.get(id)), sameWork(body))
                .flatMap(Optional::stream)
                .reduce(begin, DoneWork::later);
        return Optional.of(last.plusMonths(months(body)));
    }

    /** Words do not tell whether two works that have no name are the same. */
    private Optional<LocalDate> sameWork(DueBody body) {
        return body.work() == UpkeepWork.OTHER
                ? Optional.empty()
                : Optional.ofNullable(done.get(new ItemWork(body.item(), body.work())));
    }

    private static long months(DueBody body) {
        @Nullable Integer usual = body.work().usualMonths();
        return body.everyMonths() != null ? body.everyMonths().longValueExact() : usual == null ? 0 : usual;
    }
}
