package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.Fact;
import rasterfit.gear.Processing;
import rasterfit.gear.ScaleAxis;
import rasterfit.match.MatchResult.ModeSetting;

/** Offset and lines of a locked output in whole answers: the worked values of ../shared/DOMAIN.md section 8, a = 18. */
class BufferOffsetTest {
    private static final Offset<Double> FOUR_DECIMALS = within(0.00005);

    private static Step offset(int taps, Predicate<Settings> wanted) {
        Scene scene = new Scene();
        scene.explain = MatchRequest.Explanation.FULL;
        scene.settingsPerRoute = 10_000;
        scene.processing = Workbench.scale(taps, List.of(Workbench.locked(6000, null)), 16);
        ModeSetting setting = scene.match().ranked().stream()
                .map(setup -> setup.modeSettings().get(0))
                .filter(each -> wanted.test(each.settings()))
                .findFirst()
                .orElseThrow();
        return setting.steps().stream()
                .filter(step -> step.name().equals("bufferOffsetD"))
                .findFirst()
                .orElseThrow();
    }

    private static double ms(Step step) {
        String decimal = step.result().substring(step.result().indexOf('≈') + 1);
        return Double.parseDouble(decimal.replace("ms", "").trim());
    }

    private static Predicate<Settings> drawn(int lines, int rows) {
        return settings -> Integer.valueOf(lines).equals(settings.lines())
                && Integer.valueOf(rows).equals(settings.pictureHeight());
    }

    @Test
    void allLinesOnAllRows() {
        Step step = offset(1, drawn(240, 1080));
        assertThat(ms(step)).isCloseTo(0.6003, FOUR_DECIMALS);
        assertThat(step.inputs()).containsEntry("a", "18 first line").containsEntry("ao", "41 first row");
        assertThat(ms(offset(4, drawn(240, 1080)))).isCloseTo(0.6977, FOUR_DECIMALS);
    }

    @Test
    void croppedAlikeAboveAndBelow() {
        Step step = offset(1, drawn(216, 1080));
        assertThat(ms(step)).isCloseTo(1.3624, FOUR_DECIMALS);
        assertThat(step.inputs()).containsEntry("a", "30 first line");
    }

    @Test
    void drawnInTheMiddle() {
        // (1080 − 960)/2 = 60 rows further down than 41.
        Step step = offset(1, drawn(240, 960));
        assertThat(ms(step)).isCloseTo(0.7517, FOUR_DECIMALS);
        assertThat(step.inputs()).containsEntry("ao", "101 first row");
    }

    private static Integer held(Deinterlacer.Kind kind) {
        Scene scene = new Scene();
        scene.modes = List.of(Modes.interlaced525());
        scene.samples = List.of(1560);
        scene.processing = new Processing.RasterScale(
                "scale",
                ((Processing.RasterScale) Workbench.scale(2, List.of(), 16)).timings(),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 48),
                new ScaleAxis(ScaleAxis.Factors.ANY, 2, 64),
                List.of(new Deinterlacer(kind, Fact.known(0), false)),
                List.of(Workbench.locked(6000, null)),
                Fact.known(10));
        scene.settingsPerRoute = 10_000;
        Map<Boolean, List<ModeSetting>> fitted = scene.match().ranked().stream()
                .map(setup -> setup.modeSettings().get(0))
                .collect(Collectors.partitioningBy(setting -> drawn(240, 1080).test(setting.settings())));
        return fitted.get(true).get(0).measures().bufferedLines();
    }

    @Test
    void weavingAndMotionAdaptationKeepAFieldBesideTheLinesOnTheirWay() {
        // The longer of the two fields of 525 lines has 263.
        assertThat(held(Deinterlacer.Kind.WEAVE)).isEqualTo(held(Deinterlacer.Kind.BOB) + 263);
        assertThat(held(Deinterlacer.Kind.MOTION_ADAPTIVE)).isEqualTo(held(Deinterlacer.Kind.BOB) + 263);
    }
}
