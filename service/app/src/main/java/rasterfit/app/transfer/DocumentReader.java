package rasterfit.app.transfer;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.List;
import java.util.function.IntConsumer;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.BulkWrites;
import rasterfit.app.catalogue.CheckedItem;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import tools.jackson.databind.ObjectMapper;

/** Takes what was sent apart into its items; all of them are valid, or none is given. */
@Component
class DocumentReader {
    private final BulkWrites catalogue;
    private final ObjectMapper mapper;

    DocumentReader(BulkWrites catalogue, ObjectMapper mapper) {
        this.catalogue = catalogue;
        this.mapper = mapper;
    }

    /**
     * @param checked is told how many items have been looked at; what it throws ends the reading
     * @throws rasterfit.app.problem.ProblemException with the faults of all items and their places
     */
    List<CheckedItem> read(SentText text, IntConsumer checked) {
        ItemCollector collector = new ItemCollector(catalogue, checked);
        Kind table = text.table();
        try (Reader in = text.characters()) {
            if (table == null) {
                new JsonDocument(mapper, collector).read(in);
                collector.throwIfFaulty(errors -> JsonPlaces.placed(errors, text, mapper));
            } else {
                CsvDocument document = new CsvDocument(table, mapper, collector);
                document.read(in);
                collector.throwIfFaulty(document::placed);
            }
        } catch (CharacterCodingException otherCharacters) {
            throw new ProblemException(
                    table == null ? ProblemType.MALFORMED_JSON : ProblemType.MALFORMED_CSV,
                    "The text is not in UTF-8.");
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the body of an import was put aside and cannot be read", unreadable);
        }
        return collector.items();
    }
}
