package rasterfit.app.match;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rasterfit.app.belongings.Owned;
import rasterfit.app.belongings.Owned.OwnedDisplay;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.rule.Finding;
import rasterfit.rule.OwnerRules;
import rasterfit.upkeep.DisplayEvidence;

/** Finds the display that a request means, with what its owner found out about it. */
final class DisplayChooser {
    private static final String WAYS = "A display is named by catalogueId or itemId, or given by edidBase64 alone, or"
            + " described by inputs and panel.";

    private final Catalogue catalogue;
    private final NamedCollection collection;

    DisplayChooser(Catalogue catalogue, NamedCollection collection) {
        this.catalogue = catalogue;
        this.collection = collection;
    }

    @Nullable
    ChosenDisplay choose(Place at, DisplayChoice choice) {
        boolean isNamed = choice.catalogueId() != null || choice.itemId() != null;
        int ways = (choice.catalogueId() != null ? 1 : 0)
                + (choice.itemId() != null ? 1 : 0)
                + (choice.edidBase64() != null ? 1 : 0)
                + (choice.isDescribed() ? 1 : 0);
        if (ways != 1 || (isNamed && choice.name() != null)) {
            at.wrongForm(WAYS);
            return null;
        }
        ChosenDisplay chosen = chosen(at, choice);
        if (chosen == null) {
            return null;
        }
        Display display = withInput(at.member("input"), chosen.display(), choice.input());
        if (display == null) {
            return null;
        }
        List<DisplayInput> others = chosen.display().inputs().stream()
                .filter(input -> !display.inputs().contains(input))
                .toList();
        return new ChosenDisplay(display, chosen.owned(), chosen.findings(), others);
    }

    private @Nullable ChosenDisplay chosen(Place at, DisplayChoice choice) {
        if (choice.itemId() != null) {
            OwnedDisplay item = collection.find(at.member("itemId"), choice.itemId(), Owned::displays, "display");
            return item == null ? null : owned(item, choice.itemId());
        }
        if (choice.catalogueId() != null) {
            return catalogued(at.member("catalogueId"), choice.catalogueId());
        }
        Display display = described(at, choice);
        return display == null ? null : new ChosenDisplay(display, false, List.of());
    }

    /** What an owner found out holds for one display, so it is used only where there is no doubt which one is meant. */
    private @Nullable ChosenDisplay catalogued(Place at, String id) {
        Display display = catalogue.displays().get(id);
        if (display == null) {
            at.invalid("The catalogue has no display with this id.");
            return null;
        }
        List<Map.Entry<String, OwnedDisplay>> same = collection.all(Owned::displays).entrySet().stream()
                .filter(item -> id.equals(item.getValue().catalogueId()))
                .toList();
        if (same.size() == 1) {
            return owned(same.get(0).getValue(), id);
        }
        List<Finding> findings = same.isEmpty()
                ? List.of()
                : List.of(OwnerRules.whichDisplay(
                        display.name(), same.stream().map(Map.Entry::getKey).toList()));
        return new ChosenDisplay(display, !same.isEmpty(), findings);
    }

    /** @param id under which it is told */
    private static ChosenDisplay owned(OwnedDisplay item, String id) {
        DisplayEvidence evidence =
                DisplayEvidence.apply(item.display(), item.firmware(), item.readings(), item.tests());
        List<Finding> findings =
                evidence.unplaced().stream().map(OwnerRules::unplaced).toList();
        return new ChosenDisplay(evidence.display().withId(id), true, findings);
    }

    private static @Nullable Display described(Place at, DisplayChoice choice) {
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
        return display.with(inputs);
    }
}
