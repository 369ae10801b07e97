package rasterfit.match.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Carried;
import rasterfit.gear.ColourEncoding;
import rasterfit.gear.Converter;
import rasterfit.gear.Display;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RouteStep;

/**
 * Which chains are laid and which of them are open, by ../shared/DOMAIN.md section 4: a passive cable changes the connector,
 * never the format; sync at logic level is a hazard to a 75 ohm input; one connector may be wired in more than one way.
 */
class RouteFinderTest {
    private static final Plug CONSOLE = Parts.plug("own:console-av");
    private static final Plug SCART = Parts.plug("SCART");
    private static final Plug VGA = Parts.plug("VGA");
    private static final Plug HDMI = Parts.plug("HDMI");

    private static final Display TUBE = Parts.display(Parts.input("rgb", SCART, Format.RGB));
    private static final Display SCREEN = Parts.display(Parts.input("digital", HDMI, Format.TMDS));
    private static final Converter BOX =
            Parts.converter("box", null, SCART, Level.VIDEO_75_OHM, Parts.digitalOut(HDMI));

    private static List<Route> direct(Display display, SourceOutput output, Link... links) {
        return Parts.routes(display, List.of(output), List.of(), links);
    }

    private static List<String> keys(List<Route> routes) {
        return routes.stream().map(Route::key).toList();
    }

    private static void isRefusedBy(List<Route> routes, String rule) {
        assertThat(routes).singleElement().satisfies(route -> {
            assertThat(route.isOpen()).isFalse();
            assertThat(route.refusal()).isNotNull();
            assertThat(route.refusal().rule().id()).isEqualTo(rule);
        });
    }

    private static void isOpen(List<Route> routes) {
        assertThat(routes).singleElement().satisfies(route -> {
            assertThat(route.isOpen()).isTrue();
            assertThat(route.refusal()).isNull();
        });
    }

    @Test
    void equalConnectorsAreJoinedByAPlainLead() {
        List<Route> routes = direct(TUBE, Parts.rgb(SCART));

        isOpen(routes);
        assertThat(keys(routes)).containsExactly("rgb > tube:rgb");
    }

    @Test
    void differentConnectorsNeedACableThatMatesAtBothEnds() {
        assertThat(direct(TUBE, Parts.rgb(CONSOLE))).isEmpty();
        assertThat(direct(TUBE, Parts.rgb(CONSOLE), Parts.cable("far", CONSOLE, VGA, Format.RGB)))
                .isEmpty();
        assertThat(direct(TUBE, Parts.rgb(CONSOLE), Parts.cable("near", VGA, SCART, Format.RGB)))
                .isEmpty();
        List<Route> routes = direct(TUBE, Parts.rgb(CONSOLE), Parts.cable("lead", CONSOLE, SCART, Format.RGB));
        isOpen(routes);
        assertThat(keys(routes)).containsExactly("rgb > lead > tube:rgb");
    }

    @Test
    void aPlainLeadIsTakenOnlyWhereNoCableCarriesTheSignal() {
        // DEVELOPERS.md, decision 3.
        Link fits = Parts.cable("fits", SCART, SCART, Format.RGB);
        Link luma = Parts.cable("luma", SCART, SCART, Format.YC);

        assertThat(keys(direct(TUBE, Parts.rgb(SCART), fits))).containsExactly("rgb > fits > tube:rgb");
        // Whichever of the cables comes last.
        assertThat(keys(direct(TUBE, Parts.rgb(SCART), fits, luma)))
                .containsExactly("rgb > fits > tube:rgb", "rgb > luma > tube:rgb");
        assertThat(keys(direct(TUBE, Parts.rgb(SCART), luma, fits)))
                .containsExactly("rgb > fits > tube:rgb", "rgb > luma > tube:rgb");
        assertThat(keys(direct(TUBE, Parts.rgb(SCART), luma)))
                .containsExactly("rgb > luma > tube:rgb", "rgb > tube:rgb");
    }

    @Test
    void anInputOfUnknownConnectorTakesItsKindOfSignal() {
        // DisplayInput: a plug is absent where only an EDID is known; it then takes any connector of its kind of
        // signal.
        SourceOutput digital = Parts.output("digital", HDMI, Format.TMDS, null, Level.VIDEO_75_OHM);
        Display ofEdid = Parts.display(Parts.input("edid", null, Format.TMDS));
        Display analog = Parts.display(Parts.input("edid", null, Format.YPBPR, Format.RGB));

        isOpen(direct(ofEdid, digital));
        assertThat(direct(ofEdid, Parts.rgb(SCART))).isEmpty();
        isOpen(direct(analog, Parts.rgb(SCART)));
        assertThat(direct(analog, digital)).isEmpty();
    }

    @Test
    void aColourEncodingNeedsADecoderThatKnowsIt() {
        // BT.1700: the two usual encodings of 525 and 625 lines; a decoder that does not say is taken to know both.
        SourceOutput usual = composite(null);
        SourceOutput rare = composite("C525_443");
        isOpen(direct(Parts.display(Parts.input("in", SCART, Format.CVBS)), usual));
        isRefusedBy(direct(Parts.display(Parts.input("in", SCART, Format.CVBS)), rare), "display.encoding-not-decoded");
        Carried other = new Carried(Format.CVBS, Set.of(), Set.of(ColourEncoding.C625_443), null);
        isRefusedBy(
                direct(Parts.display(Parts.input("in", null, SCART, Level.VIDEO_75_OHM, other)), usual),
                "display.encoding-not-decoded");
        Carried both = new Carried(
                Format.CVBS, Set.of(), Set.of(ColourEncoding.C525_358, new ColourEncoding("C525_443")), null);
        isOpen(direct(Parts.display(Parts.input("in", null, SCART, Level.VIDEO_75_OHM, both)), rare));
    }

    private static SourceOutput composite(@Nullable String encoding) {
        return new SourceOutput(
                "cvbs",
                SCART,
                Format.CVBS,
                null,
                encoding == null ? null : new ColourEncoding(encoding),
                Level.VIDEO_75_OHM,
                Fact.unknown());
    }

    @Test
    void aCableThatDoesNotCarryTheFormatNeverConvertsIt() {
        isRefusedBy(
                direct(TUBE, Parts.rgb(CONSOLE), Parts.cable("luma", CONSOLE, SCART, Format.YC)),
                "cable.format-not-carried");
    }

    @Test
    void theDisplayIsAskedForFormatSyncAndLevel() {
        isRefusedBy(
                direct(Parts.display(Parts.input("in", SCART, Format.YPBPR)), Parts.rgb(SCART)),
                "display.format-not-accepted");
        Display separate = Parts.display(Parts.input(
                "in", null, SCART, Level.VIDEO_75_OHM, new Carried(Format.RGB, Set.of(SyncKind.SEPARATE_SYNC))));
        isRefusedBy(direct(separate, Parts.rgb(SCART)), "display.sync-kind-not-accepted");
        SourceOutput logic = Parts.output("rgb", SCART, Format.RGB, SyncKind.COMPOSITE_SYNC, Level.LOGIC_5V);
        isRefusedBy(direct(TUBE, logic), "display.logic-level-into-75-ohm");
    }

    @Test
    void theWiringAtTheInputIsThatOfTheCablesFarEnd() {
        Plug one = Parts.plug("SCART", "first");
        Plug other = Parts.plug("SCART", "second");
        Display wired = Parts.display(Parts.input("in", one, Format.RGB));

        isOpen(direct(wired, Parts.rgb(CONSOLE), Parts.cable("lead", CONSOLE, one, Format.RGB)));
        isRefusedBy(
                direct(wired, Parts.rgb(CONSOLE), Parts.cable("lead", CONSOLE, other, Format.RGB)),
                "display.wiring-differs");
        isRefusedBy(direct(wired, Parts.rgb(other)), "display.wiring-differs");
    }

    @Test
    void aConvertedChainAsksItsFirstCableTheConverterItsSecondCableAndTheDisplay() {
        Link lead = Parts.cable("lead", CONSOLE, SCART, Format.RGB);
        Link last = Parts.cable("last", HDMI, HDMI, Format.TMDS);

        List<Route> routes = Parts.routes(SCREEN, List.of(Parts.rgb(CONSOLE)), List.of(BOX), lead, last);
        isOpen(routes);
        assertThat(keys(routes)).containsExactly("rgb > lead > box:in → digital > last > tube:digital");

        Link luma = Parts.cable("luma", CONSOLE, SCART, Format.YC);
        isRefusedBy(
                Parts.routes(SCREEN, List.of(Parts.rgb(CONSOLE)), List.of(BOX), luma, last),
                "cable.format-not-carried");
        isRefusedBy(
                Parts.routes(
                        SCREEN,
                        List.of(Parts.output("rgb", CONSOLE, Format.RGB, SyncKind.COMPOSITE_SYNC, Level.LOGIC_3V3)),
                        List.of(BOX),
                        lead,
                        last),
                "sync.logic-level-into-75-ohm");
        Display component = Parts.display(Parts.input("digital", HDMI, Format.YPBPR));
        isRefusedBy(
                Parts.routes(component, List.of(Parts.rgb(CONSOLE)), List.of(BOX), lead, last),
                "display.format-not-accepted");
    }

    @Test
    void theSecondCableOfAConvertedChainIsAskedToo() {
        // Neither cable mates by itself with the other's connectors, so there is no plain lead beside them.
        Converter toVga = Parts.converter(
                "box",
                null,
                SCART,
                Level.VIDEO_75_OHM,
                Parts.analogOut(VGA, SyncKind.SEPARATE_SYNC, Level.VIDEO_75_OHM));
        isRefusedBy(
                Parts.routes(
                                TUBE,
                                List.of(Parts.rgb(SCART)),
                                List.of(toVga),
                                Parts.cable("back", VGA, SCART, Format.YPBPR),
                                Parts.cable("front", SCART, SCART, Format.RGB))
                        .stream()
                        .filter(route -> route.leg() != null)
                        .toList(),
                "cable.format-not-carried");
    }

    @Test
    void anAnalogConverterOutputHasSyncAndLevelOfItsOwn() {
        Display separateOnly = Parts.display(Parts.input(
                "in", null, VGA, Level.VIDEO_75_OHM, new Carried(Format.RGB, Set.of(SyncKind.SEPARATE_SYNC))));
        Converter separate = Parts.converter(
                "box",
                null,
                SCART,
                Level.VIDEO_75_OHM,
                Parts.analogOut(VGA, SyncKind.SEPARATE_SYNC, Level.VIDEO_75_OHM));
        Converter composite = Parts.converter(
                "box",
                null,
                SCART,
                Level.VIDEO_75_OHM,
                Parts.analogOut(VGA, SyncKind.COMPOSITE_SYNC, Level.VIDEO_75_OHM));
        Converter logic = Parts.converter(
                "box", null, SCART, Level.VIDEO_75_OHM, Parts.analogOut(VGA, SyncKind.SEPARATE_SYNC, Level.LOGIC_5V));

        isOpen(Parts.routes(separateOnly, List.of(Parts.rgb(SCART)), List.of(separate)));
        isRefusedBy(
                Parts.routes(separateOnly, List.of(Parts.rgb(SCART)), List.of(composite)),
                "display.sync-kind-not-accepted");
        isRefusedBy(
                Parts.routes(separateOnly, List.of(Parts.rgb(SCART)), List.of(logic)),
                "display.logic-level-into-75-ohm");
    }

    @Test
    void stepsNameEachPartWithPortStateAndSignal() {
        SourceOutput component = Parts.output("ypbpr", SCART, Format.RGB, null, Level.VIDEO_75_OHM);
        Display twoStates = Parts.display(
                Parts.input("in", "slow", HDMI, Level.VIDEO_75_OHM, new Carried(Format.TMDS, Set.of())),
                Parts.input("in", "fast", HDMI, Level.VIDEO_75_OHM, new Carried(Format.TMDS, Set.of())));
        List<Route> routes = Parts.routes(twoStates, List.of(component), List.of(BOX));

        // In the order of their keys, whatever the order of the inputs.
        assertThat(keys(routes))
                .containsExactly("ypbpr > box:in → digital > tube:in/fast", "ypbpr > box:in → digital > tube:in/slow");
        assertThat(routes.get(0).steps()).extracting(RouteStep::port).containsExactly("ypbpr", "in → digital", "in");
        assertThat(routes.get(0).steps()).extracting(RouteStep::state).containsExactly(null, null, "fast");
        assertThat(routes.get(0).steps()).extracting(RouteStep::detail).containsExactly("RGB", "TMDS", null);
        assertThat(direct(TUBE, Parts.rgb(SCART)).get(0).steps())
                .extracting(RouteStep::detail)
                .containsExactly("RGB with COMPOSITE_SYNC", null);
    }

    @Test
    void theLastHopDecidesWhetherARouteEndsDigital() {
        SourceOutput digital = Parts.output("digital", HDMI, Format.TMDS, null, Level.VIDEO_75_OHM);

        assertThat(direct(SCREEN, digital).get(0).endsDigital()).isTrue();
        assertThat(direct(TUBE, Parts.rgb(SCART)).get(0).endsDigital()).isFalse();
        assertThat(Parts.routes(SCREEN, List.of(Parts.rgb(SCART)), List.of(BOX))
                        .get(0)
                        .endsDigital())
                .isTrue();
        Converter analog = Parts.converter(
                "box",
                null,
                SCART,
                Level.VIDEO_75_OHM,
                Parts.analogOut(SCART, SyncKind.COMPOSITE_SYNC, Level.VIDEO_75_OHM));
        assertThat(Parts.routes(TUBE, List.of(Parts.rgb(SCART)), List.of(analog)).stream()
                        .filter(route -> route.leg() != null)
                        .map(Route::endsDigital))
                .containsExactly(false);
    }

    @Test
    void anOwnedCableIsOnePieceAndCannotBeOnBothSidesOfAConverter() {
        Converter box = Parts.converter(
                "box",
                null,
                SCART,
                Level.VIDEO_75_OHM,
                Parts.analogOut(SCART, SyncKind.COMPOSITE_SYNC, Level.VIDEO_75_OHM));
        Link mine = Parts.cable("mine", SCART, SCART, Format.RGB);
        Link other = Parts.cable("other", SCART, SCART, Format.RGB);

        List<String> catalogued = keys(Parts.routes(TUBE, List.of(Parts.rgb(SCART)), List.of(box), mine));
        assertThat(catalogued)
                .containsExactlyInAnyOrder("rgb > mine > tube:rgb", "rgb > mine > box:in → analog > mine > tube:rgb");

        // A plain lead takes the second place, as where no cable is known.
        assertThat(keys(Parts.routes(Set.of("mine"), TUBE, List.of(Parts.rgb(SCART)), List.of(box), mine)))
                .containsExactlyInAnyOrder("rgb > mine > tube:rgb", "rgb > mine > box:in → analog > tube:rgb");

        assertThat(keys(Parts.routes(Set.of("mine"), TUBE, List.of(Parts.rgb(SCART)), List.of(box), mine, other)))
                .contains(
                        "rgb > mine > box:in → analog > other > tube:rgb",
                        "rgb > other > box:in → analog > mine > tube:rgb",
                        "rgb > other > box:in → analog > other > tube:rgb")
                .doesNotContain("rgb > mine > box:in → analog > mine > tube:rgb");
    }

    @Test
    void everyPartOfAChainSaysWhetherItIsOwned() {
        Link mine = Parts.cable("mine", CONSOLE, SCART, Format.RGB);
        Link last = Parts.cable("last", HDMI, HDMI, Format.TMDS);
        Route route = Parts.routes(SCREEN, List.of(Parts.rgb(CONSOLE)), List.of(BOX), mine, last)
                .get(0);

        assertThat(route.steps(new MatchRequest.Owned(true, false, Set.of("mine"), List.of())))
                .extracting(RouteStep::owned)
                .containsExactly(true, true, false, false, false);
        assertThat(route.steps(new MatchRequest.Owned(false, true, Set.of("box", "last"), List.of())))
                .extracting(RouteStep::owned)
                .containsExactly(false, false, true, true, true);
        assertThat(route.steps()).extracting(RouteStep::owned).containsOnly(false);
    }
}
