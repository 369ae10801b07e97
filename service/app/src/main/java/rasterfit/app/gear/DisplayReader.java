package rasterfit.app.gear;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.EdidReading;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Panel;

/** Reads one display. */
final class DisplayReader {
    private static final int MOST_INPUTS = 32;
    private static final int MOST_STATES = 16;

    private final Place at;
    private final DisplayBody body;
    private final Provenance provenance;
    private final Set<String> assumptions = new LinkedHashSet<>();
    private final List<EdidReading> edids = new ArrayList<>();

    DisplayReader(Place at, DisplayBody body) {
        this.at = at;
        this.body = body;
        this.provenance = Provenance.read(at.member("provenance"), body.provenance());
    }

    @Nullable
    Display read(@Nullable String defaultId) {
        String id = at.id(body.id(), defaultId);
        String name = body.name() == null ? id : at.member("name").text(body.name());
        SharedReader.price(at.member("price"), body.price());
        SharedReader.supply(at.member("supply"), body.supply());
        List<DisplayInput> inputs = inputs(at.member("inputs"));
        Panel panel = panel();
        if (panel == null || !at.isSound()) {
            return null;
        }
        DisplayClass kind = body.displayClass() != null ? body.displayClass() : assumedClass(panel);
        return at.make(() -> new Display(id, name, kind, panel, inputs, List.copyOf(assumptions)));
    }

    /** One engine input per menu state; an input without states is its own only state. */
    private List<DisplayInput> inputs(Place place) {
        List<DisplayInput> all = new ArrayList<>();
        List<String> ids = place.each(body.inputs(), 1, MOST_INPUTS, (input, written) -> {
            String id = input.id(written.id(), "input-" + input.number());
            if (written.states() == null) {
                add(all, new InputReader(new StateLayers(input, written, null, null), this).read(id, null));
            } else {
                all.addAll(states(input, written, id));
            }
            return id;
        });
        place.distinct(ids, id -> id);
        return all;
    }

    private List<DisplayInput> states(Place input, DisplayBody.DisplayInputBody written, String id) {
        Place place = input.member("states");
        List<DisplayInput> all = new ArrayList<>();
        List<String> ids = place.each(written.states(), 1, MOST_STATES, (state, changed) -> {
            String stateId = state.id(changed.id(), "state-" + state.number());
            add(all, new InputReader(new StateLayers(input, written, state, changed), this).read(id, stateId));
            return stateId;
        });
        place.distinct(ids, stateId -> stateId);
        return all;
    }

    private static void add(List<DisplayInput> all, @Nullable DisplayInput input) {
        if (input != null) {
            all.add(input);
        }
    }

    private @Nullable Panel panel() {
        Place place = at.member("panel");
        DisplayBody.PanelBody written = body.panel();
        if (written instanceof DisplayBody.TubeBody tube) {
            return tube(place, tube);
        }
        if (written instanceof DisplayBody.GridBody grid) {
            return grid(place, grid);
        }
        for (EdidReading edid : edids) {
            Panel.Grid assumed = EdidDisplay.panel(edid);
            if (assumed != null) {
                assume(EdidDisplay.panelAssumption(assumed));
                return assumed;
            }
        }
        if (at.isSound()) {
            place.missing("Without an EDID that has a preferred timing the panel has to be described.");
        }
        return null;
    }

    private static @Nullable Panel tube(Place place, DisplayBody.TubeBody body) {
        size(place.member("sizeMm"), body.sizeMm());
        String aspect = body.aspect() == null ? "4:3" : body.aspect();
        if (aspect.equals("4:3")) {
            return new Panel.Tube(rasterfit.quantity.Rational.of(4, 3));
        }
        if (aspect.equals("16:9")) {
            return new Panel.Tube(rasterfit.quantity.Rational.of(16, 9));
        }
        place.member("aspect").unknownValue("A tube is 4:3 or 16:9.");
        return null;
    }

    private @Nullable Panel grid(Place place, DisplayBody.GridBody body) {
        Place pixels = place.member("pixels");
        int columns = pixels.member("columns").count(body.pixels().columns(), Range.PIXELS);
        int rows = pixels.member("rows").count(body.pixels().rows(), Range.PIXELS);
        Panel.SizeMm size = size(place.member("sizeMm"), body.sizeMm());
        if (pixels.isSound() && !EdidDisplay.isSensible(columns, rows)) {
            pixels.outOfRange(
                    "A panel is at most " + EdidDisplay.GREATEST_ASPECT + " times as wide as high, or as high as wide.",
                    Integer.toString(EdidDisplay.GREATEST_ASPECT));
        }
        if (body.filter() == null) {
            assume("How the panel resamples is not stated; interpolation is assumed.");
        }
        Panel.Filter filter = body.filter() == null ? Assumptions.PANEL_FILTER : body.filter();
        return place.make(() -> new Panel.Grid(columns, rows, size, filter));
    }

    private static Panel.@Nullable SizeMm size(Place place, DisplayBody.@Nullable SizeBody body) {
        if (body == null) {
            return null;
        }
        return new Panel.SizeMm(
                (int) place.member("width").number(body.width(), Range.SIZE_MM).round(), (int) place.member("height")
                        .number(body.height(), Range.SIZE_MM)
                        .round());
    }

    private DisplayClass assumedClass(Panel panel) {
        DisplayClass assumed = EdidDisplay.assumedClass(panel, edids);
        assume(EdidDisplay.classAssumption(assumed));
        return assumed;
    }

    void assume(String assumption) {
        assumptions.add(assumption);
    }

    void use(EdidReading edid) {
        edids.add(edid);
    }

    boolean isTube() {
        return body.panel() instanceof DisplayBody.TubeBody || body.displayClass() == DisplayClass.TUBE;
    }

    Provenance provenance() {
        return provenance;
    }
}
