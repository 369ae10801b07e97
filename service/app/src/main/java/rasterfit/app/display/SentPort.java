package rasterfit.app.display;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rasterfit.app.display.DisplayDraftBody.PortDraftBody;
import rasterfit.app.display.DisplayDraftBody.StateDraftBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.edid.EdidReading;
import rasterfit.gear.Connector;

/**
 * One port of a display.
 *
 * @param edid absent where every state has its own
 */
record SentPort(String id, String connector, @Nullable SentEdid edid, List<SentState> states) {
    private static final int MOST_STATES = 16;

    /** @param edid absent where that of the port holds */
    record SentState(String id, @Nullable SentEdid edid) {}

    /** In the order of the ports and their states. */
    List<SentEdid> edids() {
        List<SentEdid> edids = new ArrayList<>();
        if (edid != null) {
            edids.add(edid);
        }
        states.stream().map(SentState::edid).filter(Objects::nonNull).forEach(edids::add);
        return edids;
    }

    /** Null, with faults at the place, where nothing can be made of it. */
    static @Nullable SentPort read(Place at, String pointer, int number, PortDraftBody body, boolean keeps) {
        if (!Connector.isKnown(body.connector())) {
            at.member("connector")
                    .unknownValue("Unknown connector; known are " + String.join(", ", Connector.LISTED)
                            + ", or own:<slug> for one that only one maker's gear has.");
        }
        String made = body.connector().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-") + "-" + number;
        String id = body.id() == null ? made : at.member("id").slug(body.id());
        SentEdid edid = edid(at, pointer, id, body.edidBase64(), body.edidHex(), keeps);
        List<SentState> states = new ArrayList<>();
        List<StateDraftBody> written = body.states() == null ? List.of() : body.states();
        Place of = at.member("states");
        of.each(body.states(), 1, MOST_STATES, (place, state) -> {
            int stateNumber = states.size() + 1;
            String stateId = state.id() == null
                    ? "state-" + stateNumber
                    : place.member("id").slug(state.id());
            String statePointer = pointer + "/states/" + (stateNumber - 1);
            states.add(new SentState(
                    stateId,
                    edid(place, statePointer, id + "/" + stateId, state.edidBase64(), state.edidHex(), keeps)));
            return stateId;
        });
        of.distinct(states, SentState::id);
        boolean isComplete = written.stream().allMatch(state -> state.edidBase64() != null || state.edidHex() != null);
        if (body.edidBase64() == null && body.edidHex() == null && (written.isEmpty() || !isComplete)) {
            at.member("edidBase64").missing("The port needs an EDID, or every one of its states does.");
        }
        return at.isSound() ? new SentPort(id, body.connector(), edid, List.copyOf(states)) : null;
    }

    private static @Nullable SentEdid edid(
            Place at, String pointer, String port, @Nullable String base64, @Nullable String hex, boolean keeps) {
        if (base64 != null && hex != null) {
            at.member("edidHex").invalid("The EDID stands in edidBase64 already; leave one of the two out.");
            return null;
        }
        Place place = at.member(hex == null ? "edidBase64" : "edidHex");
        byte[] bytes = hex != null
                ? HexText.read(pointer + "/edidHex", hex)
                : base64 != null ? GearReader.edidBytes(place, base64) : null;
        EdidReading reading = bytes == null ? null : GearReader.edid(place, bytes);
        return bytes == null || reading == null ? null : SentEdid.of(port, reading, bytes, keeps);
    }
}
