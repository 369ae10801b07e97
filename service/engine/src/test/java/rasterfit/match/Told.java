package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Consumer;
import rasterfit.gear.AspectControl;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Panel;
import rasterfit.gear.Processing;
import rasterfit.match.MatchResult.ModeSetting;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Rational;
import rasterfit.rule.Finding;

/** What is told of the one setup of a changed {@link Scene}, and changes that more than one test makes. */
final class Told {
    private Told() {}

    static RankedSetup setup(Consumer<Scene> change) {
        Scene scene = new Scene();
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).as("%s", result.refused()).hasSize(1);
        return result.ranked().get(0);
    }

    static List<String> told(Consumer<Scene> change) {
        return setup(change).findings().stream()
                .map(finding -> finding.rule().id())
                .toList();
    }

    static String message(String rule, Consumer<Scene> change) {
        List<Finding> all = setup(change).findings();
        return all.stream()
                .filter(finding -> finding.rule().id().equals(rule))
                .map(Finding::message)
                .findFirst()
                .orElseThrow(() -> new AssertionError(rule + " is not among " + all));
    }

    static Processing repeatInterlaced(int lines, Processing.InterlacedFields fields) {
        return new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(lines))),
                null,
                Fact.known(1),
                null,
                fields,
                Fact.known(2));
    }

    static void onTube(Scene scene) {
        scene.converted = false;
        scene.displayPlug = Scene.SCART;
        scene.displayClass = DisplayClass.TUBE;
        scene.panel = new Panel.Tube(Rational.of(4, 3));
        scene.sinkKnown = false;
        scene.controls = List.of(AspectControl.FILL);
        scene.last = null;
    }

    static ModeSetting explained(Consumer<Scene> change) {
        Scene scene = new Scene();
        scene.explain = MatchRequest.Explanation.FULL;
        change.accept(scene);
        MatchResult result = scene.match();
        assertThat(result.ranked()).as("%s", result.refused()).hasSize(1);
        return result.ranked().get(0).modeSettings().get(0);
    }

    static Step step(ModeSetting setting, String name) {
        return setting.steps().stream()
                .filter(step -> step.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
