package rasterfit.match.route;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Carried;
import rasterfit.gear.Conversion;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.SyncKind;
import rasterfit.rule.Signal;

/** Which cables, adapters and switches are laid one behind the other; what a signal is behind each is common practice. */
class RunFinderTest {
    private static final Plug CONSOLE = Parts.plug("own:console-av");
    private static final Plug SCART = Parts.plug("SCART");
    private static final Plug RCA = Parts.plug("RCA_3");
    private static final Plug BNC = Parts.plug("BNC_4");
    private static final Plug VGA = Parts.plug("VGA");

    private static final List<Carried> ANY = List.of(new Carried(Format.RGB, Set.of()));
    private static final Signal FROM_CONSOLE = rgb(SyncKind.SYNC_ON_COMPOSITE, Level.VIDEO_75_OHM, CONSOLE);

    private static final Link LEAD = Parts.cable("lead", CONSOLE, SCART, Format.RGB);
    private static final Link TRANSCODER = adapter(
            "transcoder",
            SCART,
            RCA,
            new Conversion(
                    Format.RGB, null, Level.VIDEO_75_OHM, Format.YPBPR, SyncKind.SYNC_ON_LUMA, Level.VIDEO_75_OHM));
    private static final Link SEPARATOR = adapter(
            "separator",
            SCART,
            SCART,
            new Conversion(
                    Format.RGB,
                    SyncKind.SYNC_ON_COMPOSITE,
                    null,
                    Format.RGB,
                    SyncKind.COMPOSITE_SYNC,
                    Level.VIDEO_75_OHM));
    private static final Link ATTENUATOR = adapter(
            "attenuator",
            SCART,
            SCART,
            new Conversion(
                    Format.RGB,
                    SyncKind.COMPOSITE_SYNC,
                    Level.LOGIC_5V,
                    Format.RGB,
                    SyncKind.COMPOSITE_SYNC,
                    Level.VIDEO_75_OHM));

    private static Link adapter(String id, Plug from, Plug to, Conversion... conversions) {
        return new Link(
                id,
                id,
                Link.Kind.ADAPTER,
                from,
                to,
                List.of(),
                List.of(conversions),
                null,
                Fact.unknown(),
                Fact.unknown(),
                null);
    }

    private static Link passing(String id, Link.Kind kind, Plug from, Plug to) {
        return Parts.link(id, kind, from, to, null, Format.RGB);
    }

    private static Signal rgb(SyncKind sync, Level level, Plug plug) {
        return new Signal(Format.RGB, sync, level, plug);
    }

    private static List<Run> find(Signal signal, @Nullable Plug to, Link... links) {
        return new RunFinder(Arrays.asList(links)).find(signal, to, ANY);
    }

    private static List<String> told(List<Run> runs) {
        return runs.stream()
                .map(run -> run.links().stream().map(Link::id).collect(Collectors.joining(" > ")))
                .toList();
    }

    private static String refusal(Run run) {
        return Objects.requireNonNull(run.refusal()).rule().id();
    }

    @Test
    void aTranscoderMakesAnotherFormatOfTheSignal() {
        List<Run> runs = find(FROM_CONSOLE, RCA, LEAD, TRANSCODER);
        assertThat(told(runs)).containsExactly("lead > transcoder");
        assertThat(runs.get(0).arriving())
                .isEqualTo(new Signal(Format.YPBPR, SyncKind.SYNC_ON_LUMA, Level.VIDEO_75_OHM, RCA));
        assertThat(runs.get(0).refusal()).isNull();
    }

    @Test
    void aSeparatorGivesCleanSyncAndNeedNotBeUsed() {
        List<Run> runs = find(FROM_CONSOLE, SCART, LEAD, SEPARATOR);
        assertThat(told(runs)).containsExactly("lead", "lead > separator");
        assertThat(runs.get(1).arriving().sync()).isEqualTo(SyncKind.COMPOSITE_SYNC);
    }

    @Test
    void anAttenuatorBringsLogicLevelDown() {
        Signal logic = rgb(SyncKind.COMPOSITE_SYNC, Level.LOGIC_5V, SCART);
        List<Run> runs = find(logic, SCART, ATTENUATOR);
        // The plain lead stays: an adapter is a choice, and a rule says what is wrong without it.
        assertThat(told(runs)).containsExactly("attenuator", "");
        assertThat(runs.get(0).arriving().level()).isEqualTo(Level.VIDEO_75_OHM);
        assertThat(runs.get(1).arriving().level()).isEqualTo(Level.LOGIC_5V);
    }

    @Test
    void anAdapterRefusesWhatItDoesNotConvert() {
        Signal composite = rgb(SyncKind.SYNC_ON_COMPOSITE, Level.VIDEO_75_OHM, SCART);
        assertThat(refusal(find(composite, SCART, ATTENUATOR).get(0))).isEqualTo("adapter.sync-not-taken");
        Signal component = new Signal(Format.YPBPR, SyncKind.SYNC_ON_LUMA, Level.VIDEO_75_OHM, SCART);
        assertThat(refusal(find(component, RCA, TRANSCODER).get(0))).isEqualTo("adapter.format-not-taken");
    }

    @Test
    void aCouplerConvertsNothing() {
        Link coupler = passing("coupler", Link.Kind.ADAPTER, SCART, RCA);
        Run run = find(FROM_CONSOLE, RCA, LEAD, coupler).get(0);
        assertThat(run.arriving()).isEqualTo(rgb(SyncKind.SYNC_ON_COMPOSITE, Level.VIDEO_75_OHM, RCA));
        Signal component = new Signal(Format.YPBPR, SyncKind.SYNC_ON_LUMA, Level.VIDEO_75_OHM, SCART);
        assertThat(refusal(find(component, RCA, coupler).get(0))).isEqualTo("adapter.format-not-taken");
    }

    @Test
    void aSwitchMayStandAnywhereAndOnlyOnce() {
        Link first = passing("switch-a", Link.Kind.SWITCH, SCART, SCART);
        Link second = passing("switch-b", Link.Kind.SWITCH, SCART, SCART);
        assertThat(told(find(FROM_CONSOLE, RCA, LEAD, first, second, TRANSCODER)))
                .containsExactlyInAnyOrder(
                        "lead > transcoder", "lead > switch-a > transcoder", "lead > switch-b > transcoder");
        assertThat(told(find(FROM_CONSOLE, SCART, LEAD, first))).containsExactlyInAnyOrder("lead", "lead > switch-a");
        Link component = Parts.link("switch-c", Link.Kind.SWITCH, SCART, SCART, null, Format.YPBPR);
        assertThat(refusal(find(FROM_CONSOLE, SCART, LEAD, component).get(1))).isEqualTo("switch.format-not-passed");
    }

    @Test
    void aSignalIsNeverBroughtBackToWhatItWas() {
        Link there = passing("there", Link.Kind.CABLE, SCART, BNC);
        Link back = passing("back", Link.Kind.CABLE, BNC, SCART);
        assertThat(told(find(FROM_CONSOLE, SCART, LEAD, there, back))).containsExactly("lead");
        assertThat(told(find(FROM_CONSOLE, RCA, LEAD, there, back, TRANSCODER))).containsExactly("lead > transcoder");
    }

    @Test
    void anExtensionIsNotLaid() {
        Link extension = Parts.cable("extension", SCART, SCART, Format.RGB);
        assertThat(told(find(FROM_CONSOLE, SCART, LEAD, extension))).containsExactly("lead");
        Signal fromSocket = rgb(SyncKind.SYNC_ON_COMPOSITE, Level.VIDEO_75_OHM, SCART);
        assertThat(told(find(fromSocket, SCART, extension))).containsExactly("extension");
        assertThat(told(find(fromSocket, RCA, extension, TRANSCODER))).containsExactly("transcoder");
    }

    @Test
    void nothingIsAddedBehindALinkThatDoesNotPassTheSignal() {
        Link luma = Parts.cable("luma", CONSOLE, SCART, Format.YC);
        assertThat(find(FROM_CONSOLE, RCA, luma, TRANSCODER)).isEmpty();
        List<Run> runs = find(FROM_CONSOLE, SCART, luma, SEPARATOR);
        assertThat(told(runs)).containsExactly("luma");
        assertThat(refusal(runs.get(0))).isEqualTo("cable.format-not-carried");
    }

    @Test
    void aRunHasAtMostFourLinks() {
        Plug far = Parts.plug("own:far");
        Plug[] plugs = {CONSOLE, SCART, BNC, RCA, VGA, far};
        Link[] links = new Link[plugs.length - 1];
        for (int i = 0; i < links.length; i++) {
            links[i] = passing("link-" + i, Link.Kind.CABLE, plugs[i], plugs[i + 1]);
        }
        assertThat(told(find(FROM_CONSOLE, VGA, links))).containsExactly("link-0 > link-1 > link-2 > link-3");
        assertThat(find(FROM_CONSOLE, far, links)).isEmpty();
    }
}
