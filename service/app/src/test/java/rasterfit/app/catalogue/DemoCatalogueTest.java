package rasterfit.app.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.core.io.ClassPathResource;
import rasterfit.gear.Catalogue;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;

class DemoCatalogueTest {
    private static final ObjectMapper MAPPER = JsonMapper.shared();

    private static Catalogue read(String json) {
        return DemoCatalogue.read(new ByteArrayResource(json.getBytes(StandardCharsets.UTF_8)), MAPPER);
    }

    @Test
    void thePackagedDocumentIsReadWhole() {
        Catalogue catalogue = DemoCatalogue.read(new ClassPathResource("demo/catalogue.json"), MAPPER);
        assertThat(catalogue.revision()).isEqualTo(1);
        assertThat(catalogue.sources().values().stream()
                        .mapToInt(source -> source.variants().size())
                        .sum())
                .isEqualTo(6);
        assertThat(catalogue.converters()).hasSize(8);
        assertThat(catalogue.displays()).hasSize(5);
        assertThat(catalogue.links()).isNotEmpty();
    }

    @Test
    void aFaultyDocumentEndsTheStartWithThePlaceOfItsFault() {
        assertThatThrownBy(
                        () -> read(
                                "{\"format\": \"catalogue/1\", \"sources\": [{\"id\": \"a\", \"name\": \"A\", \"variants\": []}]}"))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("not a valid catalogue")
                .hasMessageContaining("/sources/0/variants");
    }

    @Test
    void anIdIsRequiredAndUnique() {
        String link =
                "{%s \"kind\": \"CABLE\", \"name\": \"x\", \"from\": {\"connector\": \"VGA\"}, \"to\": {\"connector\":"
                        + " \"VGA\"}, \"carries\": [{\"format\": \"RGB\"}]}";
        String document = "{\"format\": \"catalogue/1\", \"links\": [%s]}";
        assertThatThrownBy(() -> read(document.formatted(link.formatted("")))).hasMessageContaining("/links/0/id");
        String named = link.formatted("\"id\": \"lead\",");
        assertThat(read(document.formatted(named)).links()).containsOnlyKeys("lead");
        assertThatThrownBy(() -> read(document.formatted(named + "," + named)))
                .hasMessageContaining("/links: Two elements are named lead");
    }

    @Test
    void anotherFormatIsRefused() {
        assertThatThrownBy(() -> read("{\"format\": \"catalogue/2\"}")).hasMessageContaining("/format");
        assertThatThrownBy(() -> read("{\"format\": \"catalogue/1\"")).hasMessageContaining("not a valid catalogue");
    }
}
