package rasterfit.app.idempotency;

import java.time.OffsetDateTime;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rasterfit.app.access.OwnerData;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;

/** The keys that an owner used, with what was answered. */
@Component
class IdempotencyData implements OwnerData {
    private final JdbcClient database;
    private final ObjectMapper mapper;

    IdempotencyData(JdbcClient database, ObjectMapper mapper) {
        this.database = database;
        this.mapper = mapper;
    }

    @Override
    public String section() {
        return "idempotencyKeys";
    }

    @Override
    public JsonNode export(String owner) {
        List<ObjectNode> keys = database.sql(
                        "select key, created_at, answer from idempotency_key where owner = ? order by created_at, key")
                .param(owner)
                .query((row, number) -> mapper.createObjectNode()
                        .put("key", row.getString("key"))
                        .put(
                                "createdAt",
                                row.getObject("created_at", OffsetDateTime.class)
                                        .toInstant()
                                        .toString())
                        .set("answer", mapper.readTree(row.getString("answer"))))
                .list();
        return mapper.createArrayNode().addAll(keys);
    }

    @Override
    public void delete(String owner) {
        database.sql("delete from idempotency_key where owner = ?").param(owner).update();
    }
}
