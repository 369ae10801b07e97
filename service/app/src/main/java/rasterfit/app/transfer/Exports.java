package rasterfit.app.transfer;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import rasterfit.app.catalogue.BulkWrites;
import rasterfit.app.catalogue.ItemText;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.gear.CatalogueBody;
import tools.jackson.databind.ObjectMapper;

/** Writes what is stored out, character by character as it is stored. */
@Service
class Exports {
    private final BulkWrites catalogue;
    private final ObjectMapper mapper;

    Exports(BulkWrites catalogue, ObjectMapper mapper) {
        this.catalogue = catalogue;
        this.mapper = mapper;
    }

    /** @param revision of the catalogue at the moment of the export */
    record Text(long revision, String text) {
        byte[] bytes() {
            return text.getBytes(StandardCharsets.UTF_8);
        }
    }

    /** The gear document, each kind by id. The stored documents are put together as text: as trees they take ten times more. */
    Text document(@Nullable Kind only) {
        BulkWrites.Stored stored = catalogue.stored(only);
        String lists = Arrays.stream(Kind.values())
                .filter(kind -> only == null || only == kind)
                .map(kind -> "\"" + kind.path() + "\":" + list(kind, stored.items()))
                .collect(Collectors.joining(","));
        return new Text(stored.revision(), "{\"format\":\"" + CatalogueBody.FORMAT + "\"," + lists + "}");
    }

    private static String list(Kind kind, List<ItemText> items) {
        return items.stream()
                .filter(item -> item.kind() == kind)
                .map(ItemText::document)
                .collect(Collectors.joining(",", "[", "]"));
    }

    /** All gear of one kind by id. */
    Text table(Kind kind) {
        BulkWrites.Stored stored = catalogue.stored(kind);
        List<String> documents = stored.items().stream().map(ItemText::document).toList();
        return new Text(stored.revision(), Tables.of(kind, mapper).write(documents));
    }
}
