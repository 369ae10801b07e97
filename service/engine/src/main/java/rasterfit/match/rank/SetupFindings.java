package rasterfit.match.rank;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Basis;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.DisplayTest;
import rasterfit.gear.HalfHeight;
import rasterfit.gear.LagReading;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.OwnEvidence.OwnReading;
import rasterfit.gear.Processing;
import rasterfit.match.AcceptanceGrade;
import rasterfit.match.Latency;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.Measures;
import rasterfit.match.route.Route;
import rasterfit.match.tune.Measurer;
import rasterfit.quantity.Rational;
import rasterfit.rule.Finding;
import rasterfit.rule.FindingRules;
import rasterfit.rule.OwnerRules;
import rasterfit.rule.Rule;

/** What should be known about one setup, each thing once. */
final class SetupFindings {
    private final Setup setup;
    private final List<ModeSetting> settings;
    private final List<Measurer> measurers;
    private final MatchRequest request;
    private final List<Finding> findings = new ArrayList<>();

    SetupFindings(Setup setup, List<ModeSetting> settings, List<Measurer> measurers, MatchRequest request) {
        this.setup = setup;
        this.settings = settings;
        this.measurers = measurers;
        this.request = request;
    }

    /** In the order of the chain, as far as one part comes before another. */
    List<Finding> all() {
        Route route = setup.tuned().route();
        source(route);
        decoder(route);
        cables(route);
        Route.Leg leg = route.leg();
        if (leg != null) {
            converter(route, leg);
        }
        for (int group = 0; group < settings.size(); group++) {
            setting(settings.get(group), measurers.get(group), leg);
        }
        display(route);
        return findings;
    }

    private void add(Rule rule, String message) {
        add(new Finding(rule, message));
    }

    private void add(Finding finding) {
        if (!findings.contains(finding)) {
            findings.add(finding);
        }
    }

    private void source(Route route) {
        if (!route.output().format().isDigital() && route.output().bandwidthHz().isUnknown()) {
            add(
                    FindingRules.SOURCE_BANDWIDTH,
                    "The bandwidth of output " + route.output().id()
                            + " is not stated; 1.5 times the dot clock was taken.");
        }
        for (Mode mode : request.source().modes()) {
            if (mode.usedAssumed()) {
                add(
                        FindingRules.USED_AREA,
                        "Where mode " + mode.name() + " really draws is not fully stated; "
                                + mode.used().dots() + " × " + mode.used().lines() + " from dot "
                                + mode.used().firstDot()
                                + ", line " + mode.used().firstLine() + " was taken.");
            }
        }
    }

    /** What composite kinds lose rests on figures that nobody states, and often on an encoding that nobody stated. */
    private void decoder(Route route) {
        if (!route.signal().format().hasColourEncoding()) {
            return;
        }
        if (route.output().encoding() == null) {
            add(
                    FindingRules.COLOUR_ENCODING,
                    "The colour encoding of output " + route.output().id() + " is not stated; "
                            + (route.signal().encoding() == null
                                    ? "none could be taken."
                                    : route.signal().encoding() + " was taken."));
        }
        add(
                FindingRules.COLOUR_DECODER,
                "How well the decoder parts luma and chroma is not measured; 0.6 MHz of chroma was taken, and 3.0 MHz of luma"
                        + " where a notch parts them.");
    }

    private void cables(Route route) {
        boolean analog = !route.output().format().isDigital();
        if (route.run().isPlain()) {
            add(FindingRules.PLAIN_LEAD, "A plain lead joins the console to the next part; its price is not counted.");
        }
        boolean isStated = !route.run().isPlain()
                && route.run().links().stream()
                        .noneMatch(link -> link.bandwidthHz().isUnknown());
        if (analog && !isStated) {
            add(FindingRules.CABLE_BANDWIDTH, "The cable's bandwidth is not stated; 100 MHz was taken.");
        }
        if (route.leg() != null && route.leg().run().isPlain()) {
            add(
                    FindingRules.PLAIN_LEAD,
                    "A plain lead joins " + route.leg().converter().name()
                            + " to the display; its price is not counted.");
        }
    }

    private void converter(Route route, Route.Leg leg) {
        if (leg.input().digitiser() != null
                && !route.output().format().isDigital()
                && leg.input().digitiser().clockJitterNs().isUnknown()) {
            add(
                    FindingRules.DIGITISER_JITTER,
                    "Jitter of " + leg.converter().name() + " is not stated; 2 ns peak to peak was taken.");
        }
        if (leg.converter().settingsToTune().isUnknown()) {
            add(
                    FindingRules.SETTINGS_TO_TUNE,
                    "How much there is to set on " + leg.converter().name()
                            + " is not stated; 4 settings were counted.");
        }
        if (leg.output() instanceof ConverterOutput.Digital digital && digital.link() == LinkKind.DVI) {
            add(
                    FindingRules.DVI,
                    "Output " + leg.output().id() + " is DVI: no sound, no signalled picture aspect or RGB range.");
        }
        if (leg.converter().resyncMs().isUnknown() && setup.tuned().switchesDuringPlay()) {
            add(
                    FindingRules.RESYNC,
                    "How long " + leg.converter().name()
                            + " takes to follow a new raster is not stated; 0.5 s was taken.");
        }
    }

    private void setting(ModeSetting setting, Measurer measurer, Route.@Nullable Leg leg) {
        Measures measures = setting.measures();
        String modes = String.join(", ", setting.modes());
        Measures.Sampling sampling = measures.sampling();
        if (sampling != null && sampling.samplesPerDot().isLessThan(Rational.ONE)) {
            add(
                    FindingRules.UNDER_SAMPLED,
                    modes + ": " + number(sampling.samplesPerDot()) + " samples per dot lose dots"
                            + (sampling.alias() == null
                                    ? "."
                                    : "; the finest detail lands at "
                                            + number(sampling.alias().hz()) + " Hz."));
        } else if (sampling != null && !sampling.dotLocked()) {
            add(
                    FindingRules.NOT_DOT_LOCKED,
                    modes + ": " + number(sampling.samplesPerDot())
                            + " samples per dot make dots of " + sampling.leastSamplesPerDot() + " and "
                            + sampling.greatestSamplesPerDot() + " samples.");
        }
        if (measurer.usesPipelineAssumption()) {
            add(FindingRules.CONVERTER_DELAY, modes + ": the converter's delay is not stated in full.");
        }
        if (leg != null && leg.input().halfHeight() == HalfHeight.AS_INTERLACED && isHalfHeight(setting)) {
            add(FindingRules.HALF_HEIGHT, modes + ": the converter takes this half-height raster as interlaced.");
        }
        if (measurer.displayTakesAsInterlaced()) {
            add(FindingRules.HALF_HEIGHT, modes + ": the display takes this half-height raster as interlaced.");
        }
        if (measurer.lineAlternates()) {
            add(
                    FindingRules.HALF_LINE_JITTER,
                    modes + ": " + number(setting.outputTiming().verticalTotal())
                            + " lines per frame alternate by one.");
        }
        boolean repeatsFields = measurer.processing() instanceof Processing.LineRepeat && isInterlaced(setting);
        if (repeatsFields || setting.settings().deinterlacer() == Deinterlacer.Kind.BOB) {
            add(FindingRules.FIELD_FLICKER, modes + ": fields shown one after the other flicker on fine edges.");
        }
        Rational every = measures.dropOrRepeatEverySeconds();
        if (every != null) {
            add(FindingRules.DROPS, modes + ": one field is dropped or repeated every " + number(every) + " s.");
        }
        if (measures.tearDriftPicturesPerSecond() != null) {
            add(
                    FindingRules.TEARS,
                    modes + ": the tear passes the picture " + number(measures.tearDriftPicturesPerSecond())
                            + " times a second.");
        }
        acceptance(modes, measures.acceptance(), measurer);
        ownLag(modes, measures.displayLagMs(), measurer);
    }

    private void acceptance(String modes, Measures.Acceptance acceptance, Measurer measurer) {
        String input = setup.tuned().route().displayInput().path();
        DisplayTest outdated = measurer.outdatedTest();
        if (outdated != null) {
            add(OwnerRules.outdated(outdated, modes, input));
        }
        DisplayTest tested = acceptance.tested();
        if (tested != null) {
            add(
                    tested.outcome() == DisplayTest.Outcome.SHOWN
                            ? OwnerRules.shown(tested, modes, input)
                            : OwnerRules.dropsOut(tested, modes, input, told(acceptance.fallback())));
            return;
        }
        boolean lists = setup.tuned().route().displayInput().sink() != null;
        if (!lists || acceptance.grade().isAtLeast(AcceptanceGrade.NEAR_LISTED)) {
            return;
        }
        add(FindingRules.UNLISTED, modes + ": " + acceptance.grade() + "; " + told(acceptance.fallback()));
    }

    private static String told(Measures.@Nullable Fallback fallback) {
        if (fallback == null) {
            return "this equipment has no setting that the display lists or nearly lists.";
        }
        String what = fallback.listedAs() == null ? "another setting" : fallback.listedAs();
        return what + " on the same equipment is " + fallback.grade() + ".";
    }

    private void ownLag(String modes, Latency lag, Measurer measurer) {
        Measurer.OwnLag own = measurer.ownLag();
        if (own == null) {
            return;
        }
        String reading = "of " + own.own().on() + " (counted " + own.own().repetitions() + " times)";
        add(
                own.own().isBound()
                        ? OwnerRules.lagBounded(modes, reading, delay(lag), delay(own.without()))
                        : OwnerRules.lagMeasured(modes, reading, delay(lag), delay(own.without())));
    }

    private boolean lagIsAssumed(int group) {
        Measurer.OwnLag own = measurers.get(group).ownLag();
        boolean isRead = own != null && !own.own().isBound();
        return !isRead && settings.get(group).measures().displayLagMs().basis() == Basis.ASSUMED;
    }

    private static OwnerRules.Delay delay(Latency lag) {
        return new OwnerRules.Delay(
                lag.least(), lag.typical(), lag.greatest(), lag.basis().name());
    }

    private boolean isHalfHeight(ModeSetting setting) {
        return modesOf(setting).stream().anyMatch(Mode::isHalfHeightProgressive);
    }

    private boolean isInterlaced(ModeSetting setting) {
        return modesOf(setting).stream().anyMatch(Mode::isInterlaced);
    }

    private List<Mode> modesOf(ModeSetting setting) {
        return request.source().modes().stream()
                .filter(mode -> setting.modes().contains(mode.name()))
                .toList();
    }

    private void display(Route route) {
        for (String assumption : route.display().assumptions()) {
            add(FindingRules.DISPLAY, assumption);
        }
        boolean bounded = Stream.concat(
                        route.displayInput().lag().stream(),
                        route.displayInput().own().readings().stream().map(OwnReading::reading))
                .anyMatch(reading -> reading.method() == LagReading.Method.PRESS_TO_LIGHT);
        boolean assumed = IntStream.range(0, settings.size()).anyMatch(this::lagIsAssumed);
        if (assumed && bounded) {
            add(
                    FindingRules.LAG_BOUND,
                    "The delay of " + route.display().name()
                            + " was read from press to light, an upper bound; below it the" + " delay of its class, "
                            + route.display().displayClass() + ", was taken.");
        } else if (assumed) {
            add(
                    FindingRules.DISPLAY_LAG,
                    "The delay of " + route.display().name()
                            + " on this input is not measured or stated for this timing;"
                            + " it was taken from its class, " + route.display().displayClass() + ".");
        }
        boolean oneToOne = settings.stream()
                .allMatch(setting -> setting.settings().aspectControl() == rasterfit.gear.AspectControl.ONE_TO_ONE);
        if (!oneToOne && measurers.stream().anyMatch(Measurer::overscanIsAssumed)) {
            add(
                    FindingRules.OVERSCAN,
                    "Overscan of " + route.display().name() + " is not stated; the default of its class was taken.");
        }
        if (route.displayInput().resyncMs().isUnknown() && setup.tuned().switchesDuringPlay() && !setup.sameRaster()) {
            add(
                    FindingRules.RESYNC,
                    "How long " + route.display().name()
                            + " takes to show a new raster is not stated; the default of its kind was taken.");
        }
    }

    private static String number(Rational value) {
        return value.toSixDigits().toPlainString();
    }
}
