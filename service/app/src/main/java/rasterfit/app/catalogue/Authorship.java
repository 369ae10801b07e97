package rasterfit.app.catalogue;

import java.time.OffsetDateTime;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rasterfit.app.access.OwnerData;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * What an owner changed in the catalogue. The changes are shared and stay when the owner is deleted; that they were theirs
 * does not.
 */
@Component
class Authorship implements OwnerData {
    private final JdbcClient database;
    private final ObjectMapper mapper;

    Authorship(JdbcClient database, ObjectMapper mapper) {
        this.database = database;
        this.mapper = mapper;
    }

    @Override
    public String section() {
        return "catalogueChanges";
    }

    @Override
    public JsonNode export(String owner) {
        List<ObjectNode> changes = database.sql("select kind, id, revision, change, changed_at from catalogue_revision"
                        + " where changed_by = ? order by revision, kind, id")
                .param(owner)
                .query((row, number) -> mapper.createObjectNode()
                        .put("kind", Kind.valueOf(row.getString("kind")).path())
                        .put("id", row.getString("id"))
                        .put("revision", row.getLong("revision"))
                        .put("change", row.getString("change"))
                        .put(
                                "changedAt",
                                row.getObject("changed_at", OffsetDateTime.class)
                                        .toInstant()
                                        .toString()))
                .list();
        return mapper.createArrayNode().addAll(changes);
    }

    @Override
    public void delete(String owner) {
        database.sql("update catalogue_revision set changed_by = ? where changed_by = ?")
                .params(DELETED_OWNER, owner)
                .update();
    }
}
