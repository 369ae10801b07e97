package rasterfit.app.transfer;

import org.springframework.stereotype.Component;
import rasterfit.app.access.OwnerData;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The imports that an owner began. One that runs while its owner is deleted writes nothing, since it finds no status. */
@Component
class ImportData implements OwnerData {
    private final ImportStatuses statuses;
    private final ObjectMapper mapper;

    ImportData(ImportStatuses statuses, ObjectMapper mapper) {
        this.statuses = statuses;
        this.mapper = mapper;
    }

    @Override
    public String section() {
        return "imports";
    }

    @Override
    public JsonNode export(String owner) {
        return mapper.valueToTree(statuses.all(owner));
    }

    @Override
    public void delete(String owner) {
        statuses.deleteAll(owner);
    }
}
