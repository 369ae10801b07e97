package rasterfit.app.catalogue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.stream.Collectors;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.stereotype.Component;
import rasterfit.app.gear.CatalogueBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.problem.ProblemException;
import rasterfit.gear.Catalogue;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.ObjectMapper;

/**
 * The invented gear that is packaged with the service, read once at start-up through the same code as gear in requests.
 * A document with a fault ends the start-up: half of a catalogue would give wrong answers later.
 */
@Component
final class DemoCatalogue implements Catalogues {
    private static final long REVISION = 1;

    private final Catalogue catalogue;

    DemoCatalogue(ObjectMapper mapper) {
        this.catalogue = read(new ClassPathResource("demo/catalogue.json"), mapper);
    }

    @Override
    public Catalogue current() {
        return catalogue;
    }

    static Catalogue read(Resource document, ObjectMapper mapper) {
        try (InputStream in = document.getInputStream()) {
            return GearReader.catalogue(mapper.readValue(in, CatalogueBody.class), REVISION);
        } catch (ProblemException faulty) {
            throw new IllegalStateException(
                    document.getDescription() + " is not a valid catalogue: " + told(faulty), faulty);
        } catch (JacksonException malformed) {
            throw new IllegalStateException(
                    document.getDescription() + " is not a valid catalogue: " + malformed.getOriginalMessage() + " at "
                            + malformed.getPathReference(),
                    malformed);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(document.getDescription() + " cannot be read", unreadable);
        }
    }

    private static String told(ProblemException faulty) {
        return faulty.errors().stream()
                .map(error -> error.pointer() + ": " + error.message())
                .collect(Collectors.joining(" "));
    }
}
