package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.Processing;
import rasterfit.match.MatchResult.CriterionValue;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Rational;

/**
 * Seconds without picture when the mode changes during play, by ../shared/DOMAIN.md section 11: the converter's time, and
 * the display's where totals or active change, the clock moves by more than 0.5 % or the output is interrupted; unknown:
 * converter 0.5 s, digital display 2 s, analog 0.5 s, tube 0.3 s. Utility 2^(−s/2).
 */
class SwitchGapTest {
    private static RankedSetup setup(Consumer<Scene> change) {
        Scene scene = new Scene();
        scene.modes = modes(true);
        scene.samples = List.of(1364, 1560);
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).as("%s", result.refused()).hasSize(1);
        return result.ranked().get(0);
    }

    private static List<Mode> modes(boolean duringPlay) {
        return List.of(Modes.half525(), Modes.as(Modes.interlaced525(), "menu", 1, duringPlay));
    }

    private static void gap(double seconds, Consumer<Scene> change) {
        CriterionValue gap = setup(change).criteria().stream()
                .filter(value -> value.criterion() == Criterion.MODE_SWITCH_GAP)
                .findFirst()
                .orElseThrow();
        assertThat(gap.value()).isNotNull();
        assertThat(gap.value().toDouble()).isCloseTo(seconds, within(1e-9));
        assertThat(gap.utility()).isCloseTo(Math.pow(2, -seconds / 2), within(1e-12));
    }

    private static void doubled(Scene scene) {
        scene.processing = new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(480))),
                null,
                Fact.known(1),
                null,
                Processing.InterlacedFields.FIELD_ON_FIELD,
                Fact.known(2));
    }

    private static void direct(Scene scene, DisplayClass displayClass, Panel panel) {
        scene.converted = false;
        scene.displayPlug = Scene.SCART;
        scene.displayClass = displayClass;
        scene.panel = panel;
        scene.sinkKnown = false;
        scene.controls = List.of(AspectControl.FILL);
        scene.last = null;
    }

    @Test
    void aRasterThatStaysCostsTheConvertersTimeAlone() {
        // Both modes in 2200 × 1125, at 60.098 478 and 59.940 060 Hz: the clock moves by 0.264 %.
        gap(0.3, scene -> {});
        gap(0.5, scene -> scene.converterResync = Fact.unknown());
    }

    @Test
    void aRasterThatChangesCostsTheDisplaysTimeToo() {
        // 524 lines of the doubled 262, 525 of the doubled 262½.
        gap(2.3, SwitchGapTest::doubled);
        gap(0.8, scene -> {
            doubled(scene);
            scene.displayResync = Fact.known(500);
        });
        gap(2.3, scene -> {
            doubled(scene);
            scene.displayResync = Fact.unknown();
        });
    }

    @Test
    void withoutAConverterOnlyTheDisplayFollows() {
        gap(0.3, scene -> {
            direct(scene, DisplayClass.TUBE, new Panel.Tube(Rational.of(4, 3)));
            scene.displayResync = Fact.unknown();
        });
        gap(0.5, scene -> {
            direct(scene, DisplayClass.TELEVISION, new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST));
            scene.displayResync = Fact.unknown();
        });
        gap(1.2, scene -> {
            direct(scene, DisplayClass.TELEVISION, new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST));
            scene.displayResync = Fact.known(1200);
        });
    }

    @Test
    void itAppliesOnlyToModesEnteredDuringPlay() {
        assertThat(setup(scene -> scene.modes = modes(false)).criteria())
                .extracting(CriterionValue::criterion)
                .doesNotContain(Criterion.MODE_SWITCH_GAP);
        assertThat(setup(scene -> scene.modes = List.of(Modes.as(Modes.half525(), "picture", 1, true)))
                        .criteria())
                .extracting(CriterionValue::criterion)
                .doesNotContain(Criterion.MODE_SWITCH_GAP);
    }
}
