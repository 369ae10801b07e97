package rasterfit.app.collection;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.sql.Connection;
import java.sql.Statement;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** Nobody waits for ever for a writer that does not end. */
class CollectionLockTest extends CollectionsServed {
    @Autowired
    DataSource dataSource;

    @Test
    void aWriterThatWaitsTooLongIsToldToComeBackAndNothingIsWritten() throws Exception {
        String path = shelf("held");
        try (Connection other = dataSource.getConnection();
                Statement statement = other.createStatement()) {
            other.setAutoCommit(false);
            statement
                    .executeQuery("select 1 from collection where id = 'held' for update")
                    .close();
            HttpResponse<String> late = put(path + "/items/late", named("LINK", "hdmi-lead"), null);
            problem(late, 503, "unavailable");
            assertThat(late.headers().firstValue("Retry-After")).isPresent();
            // What only reads does not wait.
            problem(get(path + "/items/late"), 404, "not-found");
            other.rollback();
        }
        created(put(path + "/items/late", named("LINK", "hdmi-lead"), null));
    }
}
