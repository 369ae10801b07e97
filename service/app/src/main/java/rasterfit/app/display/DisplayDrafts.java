package rasterfit.app.display;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rasterfit.app.catalogue.GearDocuments;
import rasterfit.app.catalogue.Kind;
import rasterfit.app.draft.DisplayParts;
import rasterfit.app.draft.Draft;
import rasterfit.app.draft.Part;
import rasterfit.app.gear.Faults;
import rasterfit.app.gear.GearReader;
import rasterfit.app.gear.Place;
import rasterfit.app.gear.RequiredMembers;
import rasterfit.edid.EdidReading;
import rasterfit.edid.VideoLink;
import rasterfit.gear.Basis;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Panel;
import rasterfit.rule.Finding;
import rasterfit.rule.PortRules;

/** Makes whole display documents from the EDIDs of their ports. */
@Component
class DisplayDrafts {
    private static final int MOST_PORTS = 32;
    private static final String SOURCE = "the display's EDIDs and whoever sent them";

    private final GearDocuments documents;

    DisplayDrafts(GearDocuments documents) {
        this.documents = documents;
    }

    /** @throws rasterfit.app.problem.ProblemException with every fault of the request */
    DisplayDraftAnswer make(DisplayDraftBody body) {
        RequiredMembers.check(body);
        Faults faults = new Faults();
        Place root = Place.root(faults);
        String id = body.id() == null ? null : root.member("id").slug(body.id());
        String name = root.member("name").optionalText(body.name());
        List<SentPort> ports = ports(root.member("ports"), body);
        List<SentEdid> edids =
                ports.stream().flatMap(port -> port.edids().stream()).toList();
        Optional<SentPanel> panel = SentPanel.of(edids);
        if (root.isSound() && panel.isEmpty()) {
            root.member("ports")
                    .invalid("No EDID names a preferred timing that a panel can have; describe the display by hand.");
        }
        faults.throwIfAny();
        return make(id, name, ports, panel.orElseThrow());
    }

    private static List<SentPort> ports(Place at, DisplayDraftBody body) {
        boolean keeps = Boolean.TRUE.equals(body.keepSerialNumbers());
        List<SentPort> ports = new ArrayList<>();
        int[] index = {0};
        at.each(body.ports(), 1, MOST_PORTS, (place, port) -> {
            int i = index[0]++;
            SentPort read = SentPort.read(place, "/ports/" + i, i + 1, port, keeps);
            if (read != null) {
                ports.add(read);
            }
            return read;
        });
        at.distinct(ports, SentPort::id);
        return ports;
    }

    private DisplayDraftAnswer make(@Nullable String id, @Nullable String name, List<SentPort> ports, SentPanel panel) {
        List<SentEdid> edids =
                ports.stream().flatMap(port -> port.edids().stream()).toList();
        String proposed = name == null ? proposedName(edids) : name;
        Draft draft = new Draft(id, proposed == null ? "Display" : proposed, SOURCE);
        Part item = draft.root();
        if (proposed == null) {
            item.assume("name", "Display", "Neither the caller nor an EDID names it.");
        }
        DisplayClass kind = GearReader.assumedClass(
                panel.grid(), edids.stream().map(SentEdid::reading).toList());
        item.leave(
                "class", kind, "A television lists video timings and measures 80 cm or more across, else a monitor.");
        write(item.object("panel"), panel);
        List<Finding> findings = new ArrayList<>(panel.findings());
        for (SentPort port : ports) {
            Part input = item.element("inputs", port.id());
            input.set("connector", port.connector());
            write(input, port.edid(), findings);
            for (SentPort.SentState state : port.states()) {
                write(input.element("states", state.id()), state.edid(), findings);
            }
            leaveRest(input, port, kind);
        }
        DisplayDraftAnswer made = new DisplayDraftAnswer(
                Kind.DISPLAY.path(),
                draft.item(),
                draft.assumed(),
                findings.stream().map(DisplayDraftAnswer.PortFinding::of).toList());
        documents.check(Kind.DISPLAY, draft.item());
        return made;
    }

    private static @Nullable String proposedName(List<SentEdid> edids) {
        return edids.stream()
                .map(SentEdid::reading)
                .map(EdidReading::product)
                .filter(Objects::nonNull)
                .map(product -> product.displayName())
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    private static void write(Part written, SentPanel panel) {
        Panel.Grid grid = panel.grid();
        written.set("kind", "GRID");
        Part pixels = written.object("pixels");
        String of = "the EDID of port " + panel.from().port();
        if (panel.isDeclaredNative()) {
            pixels.set("columns", grid.columns(), Basis.DECLARED, "the native timing of " + of);
            pixels.set("rows", grid.rows(), Basis.DECLARED, "the native timing of " + of);
        } else {
            String reason = "The active size of the preferred timing of " + of + ".";
            pixels.assume("columns", grid.columns(), reason);
            pixels.assume("rows", grid.rows(), reason);
        }
        Panel.SizeMm size = panel.size();
        if (size != null) {
            Part sizeMm = written.object("sizeMm");
            sizeMm.set("width", size.width());
            sizeMm.set("height", size.height());
        }
        DisplayParts.leaveFilter(written);
    }

    private static void write(Part written, @Nullable SentEdid edid, List<Finding> findings) {
        if (edid != null) {
            written.set("edidBase64", edid.base64());
            if (edid.removed()) {
                findings.add(PortRules.serialNumberRemoved(edid.port()));
            }
        }
    }

    private static void leaveRest(Part input, SentPort port, DisplayClass kind) {
        boolean isAnalog = port.edids().stream()
                .map(edid -> edid.reading().input())
                .allMatch(read -> read != null && read.link() == VideoLink.ANALOG);
        if (isAnalog) {
            DisplayParts.leaveAnalog(input);
        }
        DisplayParts.leaveSettingsAndLag(input, kind, isAnalog);
    }
}
