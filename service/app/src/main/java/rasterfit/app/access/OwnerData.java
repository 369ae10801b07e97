package rasterfit.app.access;

import tools.jackson.databind.JsonNode;

/** What one capability keeps for its owners. Both methods join the transaction of the caller. */
public interface OwnerData {
    /** Stands for an owner who was deleted where the work of theirs stays, being shared. */
    String DELETED_OWNER = "deleted-owner";

    /** Its member in the export, such as {@code tokens}. */
    String section();

    /** Everything of one owner, in a form that a person can read. */
    JsonNode export(String owner);

    /** Takes away everything of one owner. */
    void delete(String owner);
}
