package rasterfit.app.collection;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.Catalogues;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.Place;
import rasterfit.upkeep.Caution;
import rasterfit.upkeep.InputReading;
import rasterfit.upkeep.LagStatistics;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What answers add to a record as it was written: what follows from it, from the catalogue, from other records and from the
 * day. Their names are those of {@link Section#addedMembers}.
 */
@Component
class AddedMembers {
    static final String NEXT_ON = "nextOn";

    private final RecordReader reader;
    private final Catalogues catalogues;
    private final ObjectMapper mapper;
    private final Clock clock;

    AddedMembers(RecordReader reader, Catalogues catalogues, ObjectMapper mapper, Clock clock) {
        this.reader = reader;
        this.catalogues = catalogues;
        this.mapper = mapper;
        this.clock = clock;
    }

    /**
     * The added members alone.
     *
     * @param done in the collection, asked for where it matters
     * @param asOf the day on which it is looked at; today (UTC) if absent
     */
    ObjectNode of(Section section, ObjectNode document, Supplier<DoneWork> done, @Nullable LocalDate asOf) {
        ObjectNode added = document.objectNode();
        switch (section) {
            case ITEMS -> item(added, reader.stored(document, OwnItemBody.class));
            case LAG_READINGS -> reading(added, reader.stored(document, LagReadingBody.class));
            case DUE -> {
                LocalDate day = asOf == null ? LocalDate.now(clock.withZone(ZoneOffset.UTC)) : asOf;
                due(added, document.path("id").asString(), reader.stored(document, DueBody.class), done.get(), day);
            }
            case CONNECTIONS, TEST_RESULTS, SERVICE_NOTES -> {}
        }
        return added;
    }

    private void item(ObjectNode added, OwnItemBody body) {
        OwnItem item =
                new ItemReader(catalogues.current()).item(Place.root(new Faults()), String.valueOf(body.id()), body);
        if (item != null && item.isLost()) {
            added.put("missingFromCatalogue", true);
        }
    }

    private void reading(ObjectNode added, LagReadingBody body) {
        InputReading reading = FindingsReader.reading(Place.root(new Faults()), body);
        if (reading != null) {
            LagStatistics statistics = LagStatistics.of(reading.measurement());
            added.set("statistics", mapper.valueToTree(LagStatisticsAnswer.of(statistics)));
        }
    }

    private static void due(ObjectNode added, String id, DueBody body, DoneWork done, LocalDate day) {
        done.next(id, body).ifPresent(next -> {
            added.put(NEXT_ON, next.toString());
            added.put("overdue", next.isBefore(day));
        });
        List<Caution> cautions = body.work().cautions();
        if (!cautions.isEmpty()) {
            ArrayNode told = added.putArray("cautions");
            cautions.forEach(caution -> told.add(caution.text()));
        }
    }
}
