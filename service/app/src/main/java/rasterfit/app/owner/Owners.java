package rasterfit.app.owner;

import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import rasterfit.app.access.OwnerData;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;

/** Everything that all capabilities keep for an owner, together: all of it as of one moment, deleted as a whole or not. */
@Service
class Owners {
    private final List<OwnerData> kept;
    private final ObjectMapper mapper;
    private final Clock clock;
    private final TransactionTemplate reading;
    private final TransactionTemplate deleting;

    Owners(List<OwnerData> kept, ObjectMapper mapper, Clock clock, PlatformTransactionManager transactions) {
        this.kept =
                kept.stream().sorted(Comparator.comparing(OwnerData::section)).toList();
        this.mapper = mapper;
        this.clock = clock;
        this.reading = new TransactionTemplate(transactions);
        this.reading.setReadOnly(true);
        this.reading.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.deleting = new TransactionTemplate(transactions);
    }

    OwnerExport export(String owner) {
        OwnerExport export = reading.execute(status -> {
            ObjectNode data = mapper.createObjectNode();
            kept.forEach(one -> data.set(one.section(), one.export(owner)));
            return new OwnerExport(owner, clock.instant(), data);
        });
        return Objects.requireNonNull(export);
    }

    void delete(String owner) {
        deleting.executeWithoutResult(status -> kept.forEach(one -> one.delete(owner)));
    }
}
