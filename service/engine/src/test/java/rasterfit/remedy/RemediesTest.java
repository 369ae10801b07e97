package rasterfit.remedy;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Carried;
import rasterfit.gear.Catalogue;
import rasterfit.gear.Connector;
import rasterfit.gear.Conversion;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Display;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.Processing;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.SyncKind;
import rasterfit.gear.Variant;
import rasterfit.match.Criterion;
import rasterfit.match.Intent;
import rasterfit.match.Limit;
import rasterfit.match.LimitedMeasure;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchRequest.Equipment;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Matcher;
import rasterfit.match.Modes;
import rasterfit.match.Reruns;
import rasterfit.match.WorkLimit;
import rasterfit.match.Workbench;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.remedy.Change.Kind;

/** Small cases of the trade, each remedy applied by hand. */
class RemediesTest {
    private static final Matcher MATCHER = new Matcher(WorkLimit.DEFAULT);
    private static final Converter DOUBLER =
            Workbench.converter("doubler", Workbench.samples(1364), Workbench.repeat(2));

    private static MatchRequest request(Converter... converters) {
        return new Workbench()
                .modes(Modes.half525())
                .converters(converters)
                .request()
                .ofEveryRoute();
    }

    private static Catalogue catalogue(List<Converter> converters, List<Link> links) {
        return Catalogue.of(1, List.of(), List.of(), converters, links);
    }

    private static Remedies.Found found(MatchRequest request, Catalogue catalogue, Others others) {
        MatchResult result = MATCHER.match(request, catalogue);
        RankedSetup first = result.ranked().isEmpty() ? null : result.ranked().get(0);
        return found(request, catalogue, others, first, Remedies.BOUND);
    }

    private static Remedies.Found found(
            MatchRequest request, Catalogue catalogue, Others others, @Nullable RankedSetup lift, Reruns.Bound bound) {
        MatchResult result = MATCHER.match(request, catalogue);
        return Remedies.of(MATCHER, bound, new Remedies.Asked(true, lift, others), request, catalogue, result);
    }

    private static List<Remedy> of(MatchRequest request, Catalogue catalogue, Others others, String rule) {
        MatchResult result = MATCHER.match(request, catalogue);
        for (int i = 0; i < result.refused().size(); i++) {
            if (result.refused().get(i).rule().id().equals(rule)) {
                return found(request, catalogue, others).refused().get(i);
            }
        }
        throw new AssertionError("nothing is refused by " + rule + ": " + result.refused());
    }

    private static double bestScore(MatchRequest request) {
        return MATCHER.match(request, Catalogue.EMPTY).ranked().get(0).score();
    }

    @Test
    void whereNothingMatesAConverterOfTheCatalogueIsTheRemedy() {
        Remedy remedy = of(request(), catalogue(List.of(DOUBLER), List.of()), Others.NONE, "chain.nothing-mates")
                .get(0);

        assertThat(remedy.change())
                .isEqualTo(new Change(Kind.ADDED_CONVERTER, "doubler", null, null, true, "Add the converter doubler."));
        assertThat(remedy.resultingScore()).isEqualTo(bestScore(request(DOUBLER)));
        assertThat(remedy.price().amount()).isEqualByComparingTo("100");
        // One line of 341 dots at 59062500/11 Hz is 63.5090 µs, and 2 µs of electronics.
        assertThat(remedy.addedLatencyMs().toDouble()).isCloseTo(0.065509, within(5e-7));
        assertThat(remedy.cautions()).isEmpty();
    }

    @Test
    void aConverterThatTheRunRefusesIsNoRemedy() {
        // It repeats lines, but its sample counts need 2 · 5000 · 15.7 kHz = 157 MHz of a 110 MHz digitiser.
        Converter tooFast = Workbench.converter("too-fast", Workbench.samples(7500), Workbench.repeat(2));
        List<Remedy> remedies =
                of(request(), catalogue(List.of(tooFast), List.of()), Others.NONE, "chain.nothing-mates");
        assertThat(remedies).isEmpty();
    }

    /** A console whose only plug is its own needs a cable; the plain lead does not mate. */
    @Test
    void aMissingCableIsFoundAndAnotherThatDoesNotReachIsNotTried() {
        Plug own = new Plug(new Connector("own:console-av"), null);
        Plug scart = new Plug(new Connector("SCART"), null);
        Plug vga = new Plug(new Connector("VGA"), null);
        MatchRequest request = request(DOUBLER);
        SourceOutput output = request.source().outputs().get(0);
        MatchRequest plugged = request.withSource(request.source()
                .withOutputs(List.of(new SourceOutput(
                        "rgb",
                        own,
                        Format.RGB,
                        SyncKind.COMPOSITE_SYNC,
                        null,
                        Level.VIDEO_75_OHM,
                        output.bandwidthHz()))));
        Link right = link("right", own, scart);
        Link elsewhere = link("elsewhere", vga, scart);
        Catalogue catalogue = catalogue(List.of(), List.of(right, elsewhere));

        List<Remedy> remedies = of(plugged, catalogue, Others.NONE, "chain.nothing-mates");
        assertThat(remedies).hasSize(1);
        assertThat(remedies.get(0).change().kind()).isEqualTo(Kind.ADDED_LINK);
        assertThat(remedies.get(0).change().id()).isEqualTo("right");
        assertThat(remedies.get(0).resultingScore())
                .isEqualTo(bestScore(plugged.withEquipment(new Equipment(false, List.of(DOUBLER), List.of(right)))));
        assertThat(found(plugged, catalogue, Others.NONE).spent()).isEqualTo(new Reruns.Spent(1, 0));
    }

    private static Link link(String id, Plug from, Plug to) {
        return Link.cable(id, id, from, to, List.of(new Carried(Format.RGB, Set.of())), null, Fact.unknown());
    }

    /** 65.5 µs of delay against a limit of 0.05 ms. */
    @Test
    void aLimitIsRelaxedNoFurtherThanTheNearestMissNeeds() {
        Limit limit = Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.of(1, 20));
        MatchRequest request = request(DOUBLER).withJudgement(Intent.EVEN_WEIGHTS, Map.of(), List.of(limit));

        List<Remedy> remedies = of(request, Catalogue.EMPTY, Others.NONE, "limit.addedLatencyMs");
        Change relaxed = remedies.stream()
                .map(Remedy::change)
                .filter(change -> change.value() != null)
                .findFirst()
                .orElseThrow();
        assertThat(relaxed.kind()).isEqualTo(Kind.RELAXED_LIMIT);
        assertThat(relaxed.id()).isEqualTo("addedLatencyMs");
        assertThat(relaxed.instead()).isEqualTo("0.05");
        // 3751/59.0625 µs and 2 µs are 65.50899... µs: rounded upwards.
        assertThat(relaxed.value()).isEqualTo("0.065509");
        Limit written = Limit.atMost(LimitedMeasure.ADDED_LATENCY_MS, Rational.parse("0.065509"));
        assertThat(remedies.get(0).resultingScore())
                .isEqualTo(bestScore(request(DOUBLER).withJudgement(Intent.EVEN_WEIGHTS, Map.of(), List.of(written))));
    }

    /** A limit of the intent is replaced by writing its weights and its other limits into the request. */
    @Test
    void aLimitOfTheIntentCanBeRelaxedToo() {
        // Overscan of 10 % at each edge cuts used lines: more than the 4 % that the intent allows on most settings.
        MatchRequest request = new Workbench()
                .modes(Modes.half525())
                .converters(DOUBLER, Workbench.converter("scaler", Workbench.samples(1364), scaler()))
                .display(Workbench.only(AspectControl.FILL, Workbench.television(5, 16, 31, 4, 19, 2, 17)))
                .intent(Intent.TRUEST_PICTURE)
                .request()
                .ofEveryRoute();
        MatchResult result = MATCHER.match(request, Catalogue.EMPTY);
        Remedies.Found found = found(request, Catalogue.EMPTY, Others.NONE);
        for (int i = 0; i < result.refused().size(); i++) {
            for (Remedy remedy : found.refused().get(i)) {
                if (remedy.change().kind() == Kind.RELAXED_LIMIT) {
                    assertThat(intentWithout(request, remedy.change()))
                            .anySatisfy(setup -> assertThat(setup.score()).isEqualTo(remedy.resultingScore()));
                }
            }
        }
        assertThat(found.refused().stream()
                        .flatMap(List::stream)
                        .map(remedy -> remedy.change().kind()))
                .contains(Kind.RELAXED_LIMIT);
    }

    private static Processing scaler() {
        return Workbench.scale(2, List.of(Workbench.locked(6000, null)), 16);
    }

    private static List<RankedSetup> intentWithout(MatchRequest request, Change change) {
        List<Limit> limits = request.intent().limits().stream()
                .filter(limit -> !limit.measure().id().equals(change.id()) || change.value() != null)
                .map(limit -> limit.measure().id().equals(change.id()) && change.value() != null
                        ? new Limit(
                                limit.measure(), limit.figure(), limit.bound(), Rational.parse(change.value()), null)
                        : limit)
                .toList();
        Map<Criterion, Double> weights = request.intent().weights();
        return MATCHER.match(request.withJudgement(Intent.EVEN_WEIGHTS, weights, limits), Catalogue.EMPTY)
                .ranked();
    }

    /** Sync at logic level into 75 ohm is refused as a danger; the other output is not. */
    @Test
    void anotherOutputIsTheRemedyWhereOneWouldDoHarm() {
        MatchRequest request = request(DOUBLER);
        SourceOutput good = request.source().outputs().get(0);
        SourceOutput harmful = new SourceOutput(
                "logic", good.plug(), good.format(), good.sync(), null, Level.LOGIC_5V, good.bandwidthHz());
        MatchRequest both = request.withSource(request.source().withOutputs(List.of(good, harmful)));

        List<Remedy> remedies = of(both, Catalogue.EMPTY, Others.NONE, "sync.logic-level-into-75-ohm");
        assertThat(remedies).hasSize(1);
        assertThat(remedies.get(0).change())
                .isEqualTo(new Change(
                        Kind.OTHER_OUTPUT,
                        "rgb",
                        "logic",
                        null,
                        false,
                        "Use the console's output rgb in place of logic."));
        assertThat(remedies.get(0).resultingScore()).isEqualTo(bestScore(request));
        assertThat(found(both, Catalogue.EMPTY, Others.NONE).spent().runs()).isZero();
    }

    /** What makes 0.3 V of the sync is what is missing, and what a chain with it then scores. */
    @Test
    void anAttenuatingAdapterIsTheRemedyForSyncAtLogicLevel() {
        MatchRequest request = request(DOUBLER);
        SourceOutput good = request.source().outputs().get(0);
        SourceOutput harmful = new SourceOutput(
                "logic", good.plug(), good.format(), good.sync(), null, Level.LOGIC_5V, good.bandwidthHz());
        MatchRequest only = request.withSource(request.source().withOutputs(List.of(harmful)));
        Link attenuator = new Link(
                "attenuator",
                "Sync attenuator",
                Link.Kind.ADAPTER,
                good.plug(),
                good.plug(),
                List.of(),
                List.of(new Conversion(
                        Format.RGB, good.sync(), Level.LOGIC_5V, Format.RGB, good.sync(), Level.VIDEO_75_OHM)),
                null,
                Fact.unknown(),
                Fact.unknown(),
                null);

        Remedy remedy = of(only, catalogue(List.of(), List.of(attenuator)), Others.NONE, "sync.logic-level-into-75-ohm")
                .get(0);
        assertThat(remedy.change())
                .isEqualTo(new Change(
                        Kind.ADDED_LINK, "attenuator", null, null, true, "Add the adapter Sync attenuator."));
        assertThat(remedy.resultingScore())
                .isEqualTo(bestScore(only.withEquipment(new Equipment(false, List.of(DOUBLER), List.of(attenuator)))));
    }

    @Test
    void anotherVariantBringsItsOwnOutput() {
        MatchRequest request = request(DOUBLER);
        SourceOutput good = request.source().outputs().get(0);
        SourceOutput harmful = new SourceOutput(
                "logic", good.plug(), good.format(), good.sync(), null, Level.LOGIC_5V, good.bandwidthHz());
        Variant late = request.source();
        MatchRequest early = request.withSource(new Variant("early", null, null, null, List.of(harmful), late.modes()));

        Remedy remedy = of(early, Catalogue.EMPTY, new Others(List.of(late), List.of()), "sync.logic-level-into-75-ohm")
                .get(0);
        assertThat(remedy.change().kind()).isEqualTo(Kind.OTHER_VARIANT);
        assertThat(remedy.change().id()).isEqualTo(late.id());
        assertThat(remedy.change().instead()).isEqualTo("early");
        assertThat(remedy.resultingScore()).isEqualTo(bestScore(request));
    }

    /** An input that only takes 31 kHz and up shows nothing of a 15.7 kHz console; the tube beside it does. */
    @Test
    void anInputThatTheRequestLeftOutIsFound() {
        Display tube = Workbench.tube(0);
        DisplayInput good = tube.inputs().get(0);
        DisplayInput fast = copy(good, "fast", 31_000, 70_000);
        MatchRequest request = request().withDisplay(tube.with(List.of(fast)));

        Remedy remedy = of(
                        request,
                        Catalogue.EMPTY,
                        new Others(List.of(), List.of(good)),
                        "display.line-rate-outside-range")
                .get(0);
        assertThat(remedy.change().kind()).isEqualTo(Kind.OTHER_DISPLAY_INPUT);
        assertThat(remedy.change().id()).isEqualTo("rgb");
        assertThat(remedy.change().instead()).isEqualTo("fast");
        assertThat(remedy.resultingScore()).isEqualTo(bestScore(request().withDisplay(tube.with(List.of(good)))));
    }

    private static DisplayInput copy(DisplayInput input, String id, long least, long greatest) {
        return new DisplayInput(
                id,
                input.state(),
                input.plug(),
                input.level(),
                input.accepts(),
                new FrequencyRange(Frequency.ofHz(least), Frequency.ofHz(greatest)),
                input.fieldRate(),
                input.scans(),
                input.halfHeight(),
                input.lineRateResolutionPpm(),
                input.sink(),
                input.aspectControls(),
                input.overscanPercent(),
                input.resyncMs(),
                input.lag(),
                input.lowDelay());
    }

    @Test
    void aRankedSetupIsLiftedByWhatIsBetterInOnePart() {
        Converter dear = Workbench.converter("dear", "900", Workbench.samples(1364), Workbench.repeat(2));
        MatchRequest request = request(dear);
        Remedies.Found found = found(request, catalogue(List.of(DOUBLER), List.of()), Others.NONE);

        assertThat(found.lift()).hasSize(1);
        assertThat(found.lift().get(0).change())
                .isEqualTo(new Change(
                        Kind.OTHER_CONVERTER,
                        "doubler",
                        "dear",
                        null,
                        true,
                        "Add the converter doubler in place of dear."));
        assertThat(found.lift().get(0).resultingScore()).isEqualTo(bestScore(request(dear, DOUBLER)));
        assertThat(found(request(DOUBLER), catalogue(List.of(dear), List.of()), Others.NONE)
                        .lift())
                .isEmpty();
    }

    @Test
    void settingsThatWorkOnTheSamePartsAreARemedyForThoseThatDoNot() {
        // 7500 samples of 15.7 kHz lines need 118 MHz of a 110 MHz digitiser, 1364 need 21 MHz.
        Converter both = Workbench.converter("both", Workbench.samples(1364, 7500), Workbench.repeat(2));
        List<Remedy> remedies =
                of(request(both), Catalogue.EMPTY, Others.NONE, "digitise.sample-rate-exceeds-converter");
        assertThat(remedies.get(0).change().kind()).isEqualTo(Kind.OTHER_SETTINGS);
        assertThat(remedies.get(0).change().told())
                .startsWith("Set on both (in → out) and the display's input digital: ")
                .contains("1364 samples per line");
    }

    @Test
    void theCheaperIsTriedFirstAndWhatTheBoundLeavesOutIsCounted() {
        List<Converter> boxes = List.of(
                Workbench.converter("dear", "900", Workbench.samples(1364), Workbench.repeat(2)),
                Workbench.converter("cheap", "30", Workbench.samples(1364), Workbench.repeat(2)),
                Workbench.converter("unpriced", null, Workbench.samples(1364), Workbench.repeat(2)));
        Remedies.Found found =
                found(request(), catalogue(boxes, List.of()), Others.NONE, null, new Reruns.Bound(1, 1_000_000));
        assertThat(found.spent()).isEqualTo(new Reruns.Spent(1, 2));
        assertThat(found.refused().get(0)).hasSize(1);
        assertThat(found.refused().get(0).get(0).change().id()).isEqualTo("cheap");

        Remedies.Found all = found(request(), catalogue(boxes, List.of()), Others.NONE);
        assertThat(all.refused().get(0))
                .extracting(remedy -> remedy.change().id())
                .contains("dear", "cheap", "unpriced");
    }

    /** An output that sends another format than the input takes is a second change. */
    @Test
    void twoChangesAtOnceAreNoRemedy() {
        Converter analogOut = new Converter(
                "analog-out",
                "Analog out",
                null,
                DOUBLER.inputs(),
                DOUBLER.processing(),
                List.of(new ConverterOutput.Analog(
                        "out",
                        new Plug(new Connector("VGA"), null),
                        Format.RGB,
                        SyncKind.SEPARATE_SYNC,
                        Level.VIDEO_75_OHM,
                        null)),
                DOUBLER.resyncMs(),
                DOUBLER.settingsToTune());
        Remedies.Found found = found(request(), catalogue(List.of(analogOut), List.of()), Others.NONE);
        assertThat(found.refused().get(0)).isEmpty();
        assertThat(found.spent().runs()).isZero();
    }
}
