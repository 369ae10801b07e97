package rasterfit.match.tune;

import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.match.Criterion;
import rasterfit.match.Modes;
import rasterfit.match.Workbench;
import rasterfit.quantity.Frequency;

/** The hot loop and the joining of groups against brute force, for cases made by hand. */
class BruteForceTest {
    @Test
    void oneGroupAgrees() {
        compare(new Workbench()
                .modes(Modes.half525())
                .converters(
                        Workbench.converter(
                                "scaler",
                                Workbench.samples(682, 858, 1364),
                                Workbench.scale(
                                        4,
                                        List.of(
                                                Workbench.locked(3000, 40),
                                                Workbench.free(2, Frequency.ofHz(60)),
                                                Workbench.free(1, Frequency.ofHz(60_000, 1001))),
                                        16,
                                        4,
                                        31)),
                        Workbench.converter(
                                "repeater",
                                "40",
                                Workbench.samples(341, 858, 1364),
                                Workbench.formatOnly(),
                                Workbench.repeat(2, 3, 4, 5))));
    }

    @Test
    void twoGroupsThatSwitchDuringPlayAgree() {
        compare(new Workbench()
                .modes(Modes.as(Modes.half525(), "play", 3, false), Modes.as(Modes.interlaced525(), "menu", 1, true))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(780, 1364),
                        Workbench.scale(2, List.of(Workbench.locked(3000, null), Workbench.free(2)), 16, 4),
                        Workbench.repeat(2, 3)))
                .weight(Criterion.MODE_SWITCH_GAP, 4));
    }

    @Test
    void modesOfDifferentRatesThatTheConverterCanShowAtOneRateAgree() {
        // Equal counts at 50 and at 60 Hz are different rasters to a display. Sparing it the change wins here, though
        // the
        // seldom mode is better off at its own rate in every other respect.
        compare(new Workbench()
                .modes(
                        Modes.as(Modes.half525(), "sixty", 1, false),
                        Modes.as(
                                Modes.of(
                                        "10640685/2",
                                        "341",
                                        "312",
                                        rasterfit.timing.Scan.PROGRESSIVE,
                                        new rasterfit.gear.Window(256, 240, 65, 40)),
                                "fifty",
                                9,
                                true))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(682),
                        Workbench.scale(1, List.of(Workbench.free(2, Frequency.ofHz(60), Frequency.ofHz(50))), 16)))
                .display(Workbench.television(0, 4))
                .weight(Criterion.MODE_SWITCH_GAP, 40));
    }

    @Test
    void lookAlikeModesAgree() {
        compare(new Workbench()
                .modes(
                        Modes.as(
                                Modes.of(
                                        "59062500/11",
                                        "342",
                                        "262",
                                        rasterfit.timing.Scan.PROGRESSIVE,
                                        new rasterfit.gear.Window(256, 240, 64, 18)),
                                "narrow",
                                2,
                                false),
                        Modes.as(
                                Modes.of(
                                        "78750000/11",
                                        "456",
                                        "262",
                                        rasterfit.timing.Scan.PROGRESSIVE,
                                        new rasterfit.gear.Window(320, 224, 92, 26)),
                                "wide",
                                1,
                                false))
                .converters(Workbench.converter(
                        "scaler",
                        Workbench.samples(684, 858, 1368),
                        Workbench.scale(4, List.of(Workbench.locked(6000, 60)), 16, 4),
                        Workbench.repeat(2, 4))));
    }

    private static void compare(Workbench bench) {
        Exhaustive.of(bench.request()).compareWith(bench.match());
    }
}
