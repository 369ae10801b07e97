package rasterfit.app.display;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The EDIDs of one display.
 *
 * @param id a slug; made from the name if absent
 * @param name that of the first EDID which has one if absent
 * @param keepSerialNumbers whether what tells one unit from another stays in the EDIDs; no if absent
 */
record DisplayDraftBody(
        @Nullable String id,
        @Nullable String name,
        @Nullable Boolean keepSerialNumbers,
        List<PortDraftBody> ports) {

    /**
     * One port; of the two members for its EDID at most one, and none only if every menu state has its own.
     *
     * @param id a slug; made from the connector and the number of the port if absent
     * @param edidHex pairs of hexadecimal digits; white space may stand between them
     * @param states menu states of the port, such as one for newer and one for older sources
     */
    record PortDraftBody(
            @Nullable String id,
            String connector,
            @Nullable String edidBase64,
            @Nullable String edidHex,
            @Nullable List<StateDraftBody> states) {}

    /**
     * One menu state, with an EDID of its own or that of its port.
     *
     * @param id a slug; made from its number if absent
     * @param edidHex as for a port
     */
    record StateDraftBody(
            @Nullable String id,
            @Nullable String edidBase64,
            @Nullable String edidHex) {}
}
