package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.timing.Scan;

/**
 * Which of its line counts a repeater uses for a mode: of the mode's standard and height the smallest that holds all its lines,
 * or else the largest; never one with more lines than the field has ("240 to 480, 720 or 960 lines", ../shared/FORMAT.md).
 */
class LineClassTest {
    private static Processing.LineCounts twice(LineStandard standard, int from) {
        return new Processing.LineCounts(standard, from, List.of(2 * from));
    }

    private static Processing repeater(Processing.LineCounts... counts) {
        return new Processing.LineRepeat(
                "repeat",
                List.of(counts),
                null,
                Fact.known(1),
                null,
                Processing.InterlacedFields.REFUSED,
                Fact.known(2));
    }

    private static Mode mode(LineStandard standard, int lines, String linesPerField) {
        Window active = new Window(256, lines, 65, 10);
        return Modes.of(
                standard, "59062500/11", "341", linesPerField, Scan.PROGRESSIVE, active, active, PictureShape.TUBE_4_3);
    }

    private static MatchResult match(Mode mode, Processing processing) {
        Scene scene = new Scene();
        scene.modes = List.of(mode);
        scene.samples = List.of(1364);
        scene.processing = processing;
        return scene.match();
    }

    private static int linesSent(Mode mode, Processing processing) {
        MatchResult result = match(mode, processing);
        assertThat(result.ranked()).as("%s", result.refused()).isNotEmpty();
        RankedSetup setup = result.ranked().get(0);
        Settings settings = setup.modeSettings().get(0).settings();
        assertThat(settings.lineRepetition()).isEqualTo(2);
        assertThat(settings.outputActiveLines()).isEqualTo(2 * settings.lines());
        return settings.lines();
    }

    private static void noneFits(Mode mode, Processing processing) {
        MatchResult result = match(mode, processing);
        assertThat(result.ranked()).isEmpty();
        assertThat(result.refused())
                .extracting(group -> group.rule().id())
                .containsExactly("repeat.no-line-count-for-input");
    }

    @ParameterizedTest
    @CsvSource({"200, 224", "224, 224", "225, 240", "240, 240", "241, 250", "251, 250"})
    void theSmallestThatHoldsAllLinesOrElseTheLargest(int lines, int sent) {
        LineStandard standard = LineStandard.L525_60;
        // In any order of the list.
        assertThat(linesSent(
                        mode(standard, lines, "262"),
                        repeater(twice(standard, 250), twice(standard, 224), twice(standard, 240))))
                .isEqualTo(sent);
    }

    @Test
    void aClassOfAnotherStandardIsNotMeant() {
        Mode mode = mode(LineStandard.L525_60, 240, "262");
        assertThat(linesSent(mode, repeater(twice(LineStandard.L625_50, 240), twice(LineStandard.L525_60, 250))))
                .isEqualTo(250);
        noneFits(mode, repeater(twice(LineStandard.L625_50, 240)));
    }

    @Test
    void aClassWithMoreLinesThanTheFieldIsNotMeant() {
        LineStandard standard = LineStandard.L525_60;
        assertThat(linesSent(mode(standard, 240, "262"), repeater(twice(standard, 261))))
                .isEqualTo(261);
        noneFits(mode(standard, 240, "262"), repeater(twice(standard, 262)));
        noneFits(mode(standard, 240, "262"), repeater(twice(standard, 288)));
    }

    @Test
    void fullHeightModesHaveClassesOfTheirOwn() {
        // From 400 lines on: half way between the half-height rasters and the full ones.
        LineStandard standard = LineStandard.OTHER;
        assertThat(linesSent(mode(standard, 400, "449"), repeater(twice(standard, 240), twice(standard, 400))))
                .isEqualTo(400);
        assertThat(linesSent(mode(standard, 399, "449"), repeater(twice(standard, 300), twice(standard, 400))))
                .isEqualTo(300);
        noneFits(mode(standard, 400, "449"), repeater(twice(standard, 240)));
    }

    @Test
    void everyCountOfTheClassIsTried() {
        LineStandard standard = LineStandard.L525_60;
        Scene scene = new Scene();
        scene.samples = List.of(1364);
        scene.settingsPerRoute = 1000;
        scene.processing = repeater(new Processing.LineCounts(standard, 240, List.of(240, 480, 720, 960)));
        assertThat(scene.match().ranked())
                .extracting(setup -> setup.modeSettings().get(0).settings().lineRepetition())
                .containsAll(Arrays.asList(2, 3, 4));
    }
}
