package rasterfit.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.match.Workbench.converter;
import static rasterfit.match.Workbench.free;
import static rasterfit.match.Workbench.locked;
import static rasterfit.match.Workbench.samples;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Deinterlacer.Kind;
import rasterfit.gear.Display;
import rasterfit.gear.Fact;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.Processing.InterlacedFields;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.ScaleAxis;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.Workbench;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Each way of processing in each shape that the demo gear may not have, every ranked setup replayed. */
class EveryWayReplayTest {
    private static final Mode WIDE_BORDERS =
            Modes.of("5320342.5", "341", "312", Scan.PROGRESSIVE, new Window(256, 240, 65, 41));
    private static final Mode BROKEN_LINE =
            Modes.of("590625000/88", "855/2", "262", Scan.PROGRESSIVE, new Window(320, 224, 82, 22));
    private static final Mode INTERLACED_625 =
            Modes.of("13500000", "864", "625/2", Scan.INTERLACED, new Window(702, 288, 141, 22));
    private static final SamplesPerLine COUNTS = samples(858, 1023, 1364, 1710);
    private static final List<Deinterlacer> NONE = List.of();

    private static Arguments of(String name, Way way, int atLeast, Workbench workbench) {
        return Arguments.of(name, way, atLeast, Bench.of(workbench));
    }

    private static Workbench bench(Display display, Mode mode, Processing processing) {
        return new Workbench().modes(mode).display(display).converters(converter("box", COUNTS, processing));
    }

    static Stream<Arguments> cases() {
        Display television = Workbench.television(3, 2, 4, 16, 17, 19, 31);
        Display exact = Workbench.television(0, 2, 4, 16, 17, 19, 31);
        Display tube = Workbench.tube(4);
        Mode half = Modes.half525();
        Mode interlaced = Modes.interlaced525();
        Fact unknown = Fact.unknown();
        return Stream.of(
                of("a tube", Way.DIRECT, 1, new Workbench().modes(half).display(tube)),
                of(
                        "a tube, interlaced",
                        Way.DIRECT,
                        1,
                        new Workbench().modes(interlaced).display(tube)),
                of("digitised", Way.DIGITISED, 10, bench(television, interlaced, Workbench.formatOnly())),
                of(
                        "repeated, start stated",
                        Way.REPEATED,
                        20,
                        bench(television, half, Bench.repeat(Fact.known(Rational.of(3, 2)), InterlacedFields.REFUSED))),
                of(
                        "repeated, start not stated",
                        Way.REPEATED,
                        20,
                        bench(exact, BROKEN_LINE, Bench.repeat(unknown, InterlacedFields.REFUSED))),
                of(
                        "fields repeated",
                        Way.REPEATED,
                        20,
                        bench(exact, interlaced, Bench.repeat(unknown, InterlacedFields.FIELD_SHIFTED))),
                of(
                        "625 lines repeated",
                        Way.REPEATED,
                        20,
                        bench(television, WIDE_BORDERS, Bench.repeat(unknown, InterlacedFields.FIELD_ON_FIELD))),
                of(
                        "locked, nearest line",
                        Way.LOCKED_SCALE,
                        30,
                        bench(exact, half, Bench.scale(1, NONE, locked(9000, null), 2, 4, 16))),
                of(
                        "locked, two taps",
                        Way.LOCKED_SCALE,
                        30,
                        bench(television, WIDE_BORDERS, Bench.scale(2, NONE, locked(9000, null), 17, 19, 31))),
                of(
                        "locked, six taps",
                        Way.LOCKED_SCALE,
                        30,
                        bench(television, BROKEN_LINE, Bench.scale(6, NONE, locked(9000, null), 2, 4, 16))),
                of(
                        "locked, whole factors",
                        Way.LOCKED_SCALE,
                        20,
                        bench(
                                exact,
                                half,
                                Bench.scale(ScaleAxis.Factors.WHOLE, 1, NONE, locked(9000, null), 2, 4, 16))),
                of(
                        "free",
                        Way.FREE_RUNNING,
                        30,
                        bench(television, half, Bench.scale(4, NONE, free(2, Frequency.ofHz(50)), 4, 16))),
                of("free, faster", Way.FREE_RUNNING, 30, bench(exact, WIDE_BORDERS, Bench.scale(1, NONE, free(3), 16))),
                of("one store", Way.SINGLE_STORE, 30, bench(exact, WIDE_BORDERS, Bench.scale(2, NONE, free(1), 4, 16))),
                of(
                        "one store, slower",
                        Way.SINGLE_STORE,
                        30,
                        bench(television, half, Bench.scale(1, NONE, free(1, Frequency.ofHz(50)), 4, 16))),
                deinterlaced("bob", Way.BOB, interlaced, Kind.BOB, unknown, 1, 0),
                deinterlaced("bob, four taps", Way.BOB, INTERLACED_625, Kind.BOB, unknown, 4, 0),
                deinterlaced("weave", Way.WEAVE, interlaced, Kind.WEAVE, Fact.known(1), 2, 0),
                deinterlaced("adaptive", Way.MOTION_ADAPTIVE, interlaced, Kind.MOTION_ADAPTIVE, unknown, 4, 0),
                deinterlaced("bob, free", Way.BOB, INTERLACED_625, Kind.BOB, unknown, 1, 2),
                deinterlaced("weave, free", Way.WEAVE, interlaced, Kind.WEAVE, unknown, 2, 2),
                deinterlaced("adaptive, one store", Way.SINGLE_STORE, interlaced, Kind.MOTION_ADAPTIVE, unknown, 2, 1));
    }

    /** @param stores 0 for a locked output */
    private static Arguments deinterlaced(
            String name, Way way, Mode mode, Kind kind, Fact addedFields, int taps, int stores) {
        Processing scale = Bench.scale(
                taps,
                List.of(Bench.deinterlacer(kind, addedFields)),
                stores == 0 ? locked(9000, null) : free(stores),
                4,
                16,
                19,
                31);
        return of(name, way, 30, bench(Workbench.television(2, 4, 16, 19, 31), mode, scale));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void everyRankedSetupShowsWhatItClaims(String name, Way way, int atLeast, Bench bench) {
        assertConfirmed(bench);
        assertThat(bench.result().ranked())
                .filteredOn(setup ->
                        setup.modeSettings().stream().map(Way::of).anyMatch((Set<Way> ways) -> ways.contains(way)))
                .hasSizeGreaterThanOrEqualTo(atLeast);
    }

    private static void assertConfirmed(Bench bench) {
        for (RankedSetup setup : bench.result().ranked()) {
            assertThat(bench.replay().objections(setup))
                    .as("rank %d: %s", setup.rank(), setup.modeSettings())
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @MethodSource("conventions")
    void modesThatLookAlikeAreEachHeldToTheirOwnClaims(PixelAspectConvention convention) {
        Mode narrow = Modes.as(Modes.half525(), "narrow", 2, false);
        Mode wide = Modes.as(BROKEN_LINE, "wide", 3, true);
        Bench bench = Bench.of(
                new Workbench()
                        .modes(narrow, wide)
                        .display(Workbench.television(3, 2, 4, 16))
                        .converters(
                                converter("locked", COUNTS, Bench.scale(2, NONE, locked(9000, null), 4, 16)),
                                converter("repeater", COUNTS, Bench.repeat(Fact.known(1), InterlacedFields.REFUSED))),
                convention);
        assertConfirmed(bench);
        assertThat(bench.result().ranked()).hasSizeGreaterThanOrEqualTo(60);
    }

    static List<PixelAspectConvention> conventions() {
        return List.of(PixelAspectConvention.values());
    }
}
