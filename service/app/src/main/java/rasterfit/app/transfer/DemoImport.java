package rasterfit.app.transfer;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.BulkWrites;
import rasterfit.app.catalogue.CheckedItem;
import rasterfit.app.problem.ProblemException;

/**
 * Puts the invented gear that is packaged with the service into a catalogue that nothing was ever written to, before the
 * first request is taken. A document with a fault ends the start-up: half of a catalogue would give wrong answers later.
 */
@Component
class DemoImport implements SmartLifecycle {
    /** In front of the web server, which starts last. */
    static final int PHASE = 0;

    private static final Logger LOG = LoggerFactory.getLogger(DemoImport.class);
    private static final String WRITER = "demo";

    private final BulkWrites catalogue;
    private final DocumentReader reader;
    private volatile boolean running;

    DemoImport(BulkWrites catalogue, DocumentReader reader) {
        this.catalogue = catalogue;
        this.reader = reader;
    }

    @Override
    public void start() {
        running = true;
        List<CheckedItem> demo = read(new ClassPathResource("demo/catalogue.json"));
        if (catalogue.refreshing(demo, () -> catalogue.writeIfEmpty(demo, WRITER))) {
            LOG.info("The catalogue was empty and now holds {} invented items", demo.size());
        }
    }

    @Override
    public void stop() {
        running = false;
    }

    @Override
    public boolean isRunning() {
        return running;
    }

    @Override
    public int getPhase() {
        return PHASE;
    }

    private List<CheckedItem> read(Resource document) {
        try (InputStream in = document.getInputStream();
                SentText text = SentText.of(in, null)) {
            return reader.read(text, checked -> {});
        } catch (ProblemException faulty) {
            throw new IllegalStateException(
                    document.getDescription() + " is not a valid catalogue: " + faulty.detail(), faulty);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(document.getDescription() + " cannot be read", unreadable);
        }
    }
}
