package rasterfit.app.match;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;

/** Finds the display that a request means. */
final class DisplayChooser {
    private static final String WAYS =
            "A display is named by catalogueId, or given by edidBase64 alone, or described by inputs and panel.";

    private final Catalogue catalogue;

    DisplayChooser(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    @Nullable
    Display choose(Place at, DisplayChoice choice) {
        boolean isNamed = choice.catalogueId() != null;
        boolean isEdid = choice.edidBase64() != null;
        int ways = (isNamed ? 1 : 0) + (isEdid ? 1 : 0) + (choice.isDescribed() ? 1 : 0);
        if (ways != 1 || (isNamed && choice.name() != null)) {
            at.wrongForm(WAYS);
            return null;
        }
        Display display = display(at, choice);
        return display == null ? null : withInput(at.member("input"), display, choice.input());
    }

    private @Nullable Display display(Place at, DisplayChoice choice) {
        if (choice.catalogueId() != null) {
            Display display = catalogue.displays().get(choice.catalogueId());
            if (display == null) {
                at.member("catalogueId").invalid("The catalogue has no display with this id.");
            }
            return display;
        }
        String name = choice.name() == null ? "Display" : at.member("name").text(choice.name());
        if (choice.edidBase64() != null) {
            return GearReader.displayFromEdid(at.member("edidBase64"), name, choice.edidBase64());
        }
        if (choice.inputs() == null) {
            at.member("inputs").missing("This member is required.");
            return null;
        }
        return GearReader.display(at, body(choice, name, choice.inputs()), "display");
    }

    private static DisplayBody body(DisplayChoice choice, String name, List<DisplayBody.DisplayInputBody> inputs) {
        return new DisplayBody(
                choice.id(),
                name,
                choice.displayClass(),
                choice.panel(),
                inputs,
                choice.price(),
                choice.supply(),
                choice.provenance());
    }

    private static @Nullable Display withInput(Place at, Display display, @Nullable String chosen) {
        if (chosen == null) {
            return display;
        }
        List<DisplayInput> inputs = display.inputs().stream()
                .filter(input -> input.id().equals(chosen) || input.path().equals(chosen))
                .toList();
        if (inputs.isEmpty()) {
            at.invalid("The display has no such input; it has "
                    + display.inputs().stream().map(DisplayInput::path).collect(Collectors.joining(", ")) + ".");
            return null;
        }
        return new Display(
                display.id(), display.name(), display.displayClass(), display.panel(), inputs, display.assumptions());
    }
}
