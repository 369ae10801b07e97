package rasterfit.match;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.AspectControl;
import rasterfit.gear.Deinterlacer;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Fact;
import rasterfit.gear.Format;
import rasterfit.gear.LineStandard;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Mode;
import rasterfit.gear.Panel;
import rasterfit.gear.PictureShape;
import rasterfit.gear.Processing;
import rasterfit.gear.SamplesPerLine;
import rasterfit.gear.ScaleAxis;
import rasterfit.gear.Window;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.quantity.Rational;
import rasterfit.timing.Scan;

/** Which widths and sample counts a scaler tries, by ../shared/DOMAIN.md sections 6 and 7. */
class ScaleChoicesTest {
    private static void only(Scene scene, Criterion wanted) {
        for (Criterion criterion : Criterion.values()) {
            scene.weights.put(criterion, criterion == wanted ? 1.0 : 0.0);
        }
    }

    /**
     * A panel of 5:4 gives the samples of 720 × 480 another shape under every control: signalled as 4:3 they are 8:9, filled
     * they are (5/4)·480/720 = 5:6, one to one or square 1:1. For each there is a width whose aspect errs by half a column
     * at most, and one that errs by up to 1 % is as good as exact (section 11). 240 lines sent twice need 2 · 256 · 8/7 = 585
     * square columns, 658 of 8:9, 702 of 5:6; the whole factors, 512 and 768 columns, err by more.
     */
    @ParameterizedTest
    @CsvSource({
        "TELEVISION, HDMI, SIGNALLED",
        "TELEVISION, DVI, SIGNALLED",
        "TELEVISION, HDMI, FILL",
        "TELEVISION, DVI, ONE_TO_ONE",
        "MONITOR, HDMI, SIGNALLED",
        "MONITOR, DVI, SIGNALLED",
        "MONITOR, DVI, FILL",
        "MONITOR, HDMI, ONE_TO_ONE"
    })
    void aWidthIsTriedForTheShapeThatSamplesComeToHave(
            DisplayClass displayClass, LinkKind link, AspectControl control) {
        Scene scene = new Scene();
        scene.displayClass = displayClass;
        scene.link = link;
        scene.controls = List.of(control);
        scene.panel = new Panel.Grid(1280, 1024, null, Panel.Filter.NEAREST);
        scene.vics = List.of(2);
        scene.processing = Workbench.scale(1, List.of(Workbench.locked(6000, null)), 2);
        only(scene, Criterion.ASPECT);
        Measures.Shape shape =
                scene.match().ranked().get(0).modeSettings().get(0).measures().shape();

        assertThat(shape.aspectErrorPercent().abs().toDouble()).isLessThanOrEqualTo(1);
    }

    /** 4:3 takes 1280 × 960 of a panel of 1280 × 1024 where the link signals it; a television that is told nothing fills. */
    @ParameterizedTest
    @CsvSource({"HDMI, 93.75", "DVI, 100"})
    void onlyHdmiSignalsTheAspectOfItsTiming(LinkKind link, String heightPercent) {
        Scene scene = new Scene();
        scene.link = link;
        scene.panel = new Panel.Grid(1280, 1024, null, Panel.Filter.NEAREST);
        scene.vics = List.of(2);
        scene.processing = Workbench.scale(1, List.of(Workbench.locked(6000, null)), 2);
        only(scene, Criterion.COVERAGE);
        Measures.Shape shape =
                scene.match().ranked().get(0).modeSettings().get(0).measures().shape();

        assertThat(shape.coverageHeightPercent()).isEqualTo(Rational.parse(heightPercent));
    }

    private static Set<Integer> tried(Scene scene) {
        scene.sampleRange = new SamplesPerLine.FreeRange(300, 2400);
        scene.settingsPerRoute = 10_000;
        Set<Integer> tried = new TreeSet<>();
        for (RankedSetup setup : scene.match().ranked()) {
            Measures.Sampling sampling = setup.modeSettings().get(0).measures().sampling();
            assertThat(sampling).isNotNull();
            tried.add(sampling.samplesPerLine());
        }
        return tried;
    }

    @Test
    void ofAFreeRangeMultiplesStandardLinesAndExactAspectsAreTried() {
        // k·341; 780, 858, 864, 944 and their doubles; f · 341 · 8/7 for the 1 to 4 rows that fit to each of 240 lines
        // in 1080
        // and the first number past them: 389.7, 779.4, 1169.1, 1558.9, 1948.6 (but not 6: 2338.3).
        assertThat(tried(new Scene()))
                .containsExactly(
                        341, 390, 682, 779, 780, 858, 864, 944, 1023, 1169, 1364, 1559, 1560, 1705, 1716, 1728, 1888,
                        1949, 2046, 2387);
    }

    @Test
    void ofAnInterlacedPictureTheFrameLinesCount() {
        // 780 square dots a line, so f · 780; 1080 has 2 rows for each of 480 frame lines, and 3 is the first past
        // them.
        Scene scene = new Scene();
        scene.modes = List.of(Modes.interlaced525());
        assertThat(tried(scene)).containsExactly(780, 858, 864, 944, 1560, 1716, 1728, 1888, 2340);
    }

    /** Captured lines of a field and the rows on which they are drawn. */
    private record Vertical(int lines, int rows) {}

    private static Set<Vertical> verticals(Scene scene) {
        scene.settingsPerRoute = 10_000;
        return scene.match().ranked().stream()
                .map(setup -> setup.modeSettings().get(0).settings())
                .map(settings -> new Vertical(settings.lines(), settings.pictureHeight()))
                .collect(Collectors.toSet());
    }

    @Test
    void wholeFactorsUpToFitTheFirstPastItAndTheFitAreTried() {
        // 240 lines in 1080 rows: 1 to 4 times; 5 times 216 of them; 6 times 180, which would crop 60 lines, and 48 are
        // the
        // most; all of them on all rows.
        Scene scene = new Scene();
        assertThat(verticals(scene))
                .containsExactlyInAnyOrder(
                        new Vertical(240, 240),
                        new Vertical(240, 480),
                        new Vertical(240, 720),
                        new Vertical(240, 960),
                        new Vertical(216, 1080),
                        new Vertical(240, 1080));
    }

    @Test
    void cropIsCountedInFrameLines() {
        // 2 · 240 lines: once and twice; 3 times 180 lines of each field would crop 2 · 60 of the frame.
        Scene scene = new Scene();
        scene.modes = List.of(Modes.interlaced525());
        scene.samples = List.of(1560);
        assertThat(verticals(scene))
                .containsExactlyInAnyOrder(new Vertical(240, 480), new Vertical(240, 960), new Vertical(240, 1080));
    }

    @Test
    void croppedInterlacedLinesAreThoseThatAreNotDrawn() {
        // Drawn are 180 of the 240 lines of each field, 30 above and below. 3 times 180 lines leave out just what is
        // empty.
        Mode menu = Modes.interlaced525();
        Window active = menu.active();
        Window used = new Window(active.dots(), 180, active.firstDot(), active.firstLine() + 30);
        Scene scene = new Scene();
        scene.modes = List.of(Modes.of(
                LineStandard.L525_60,
                "135000000/11",
                "780",
                "525/2",
                Scan.INTERLACED,
                active,
                used,
                PictureShape.TUBE_4_3));
        scene.samples = List.of(1560);
        scene.settingsPerRoute = 10_000;
        scene.processing = new Processing.RasterScale(
                "scale",
                ((Processing.RasterScale) Workbench.scale(1, List.of(), 16)).timings(),
                new ScaleAxis(ScaleAxis.Factors.WHOLE, 1, 200),
                new ScaleAxis(ScaleAxis.Factors.ANY, 1, 64),
                List.of(new Deinterlacer(Deinterlacer.Kind.BOB, Fact.known(0), false)),
                List.of(Workbench.locked(6000, null)),
                Fact.known(10));
        assertThat(scene.match().ranked())
                .extracting(setup -> setup.modeSettings().get(0))
                .filteredOn(setting ->
                        Integer.valueOf(180).equals(setting.settings().lines()))
                .isNotEmpty()
                .allSatisfy(setting -> {
                    assertThat(setting.settings().firstLine()).isEqualTo(active.firstLine() + 30);
                    assertThat(setting.settings().pictureHeight()).isEqualTo(1080);
                    assertThat(setting.measures().shape().croppedLines()).isEqualTo(Rational.of(120));
                    assertThat(setting.measures().shape().croppedUsedLines().signum())
                            .isZero();
                });
    }

    @Test
    void aDigitalPictureIsScaledWithoutBeingSampled() {
        // 1280 × 720 on 1920 × 1080: 1.5 rows and columns for each, so of 1 and 2 pixels; nothing is sampled.
        Scene scene = new Scene();
        scene.format = Format.TMDS;
        scene.outputPlug = Scene.HDMI;
        scene.modes = List.of(Modes.digital720());
        scene.lead = null;
        scene.last = Scene.cable("last", Scene.HDMI, Scene.HDMI, Fact.known(500_000_000));
        scene.processing = Workbench.scale(1, List.of(Workbench.locked(6000, null)), 16);
        only(scene, Criterion.COVERAGE);
        RankedSetup setup = scene.match().ranked().stream()
                .filter(each -> each.route().size() > 3)
                .findFirst()
                .orElseThrow();
        Settings settings = setup.modeSettings().get(0).settings();
        Measures measures = setup.modeSettings().get(0).measures();

        assertThat(settings.samplesPerLine()).isNull();
        assertThat(settings.captureDots()).isEqualTo(Rational.of(1280));
        assertThat(settings.captureFirstDot()).isEqualTo(Rational.of(260));
        assertThat(settings.pictureWidth()).isEqualTo(1920);
        assertThat(settings.pictureHeight()).isEqualTo(1080);
        assertThat(measures.sampling()).isNull();
        assertThat(measures.linkDetail()).isNull();
        assertThat(measures.shape().horizontalScale()).isEqualTo(Rational.of(3, 2));
        assertThat(measures.shape().verticalScale()).isEqualTo(Rational.of(3, 2));
        assertThat(measures.shape().leastDotWidth()).isEqualTo(1);
        assertThat(measures.shape().greatestDotWidth()).isEqualTo(2);
        assertThat(measures.shape().coveragePercent()).isEqualTo(Rational.of(100));
    }
}
