package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rasterfit.gear.AspectControl;
import rasterfit.gear.DisplayClass;
import rasterfit.gear.Panel;
import rasterfit.quantity.Rational;

/**
 * Where a raster lands on a panel, by hand from ../shared/DOMAIN.md section 7: fill, keep the signalled aspect, or one sample
 * per panel pixel; without a signalled aspect a television fills and a monitor assumes square samples.
 */
class PanelFitTest {
    private static final Panel WIDE = new Panel.Grid(1920, 1080, null, Panel.Filter.NEAREST);
    private static final Panel NARROW = new Panel.Grid(1280, 1024, null, Panel.Filter.NEAREST);

    private static PanelFit fit(
            AspectControl control,
            Panel panel,
            DisplayClass displayClass,
            int columns,
            int rows,
            @Nullable String aspect,
            String overscan) {
        return PanelFit.of(
                control,
                panel,
                displayClass,
                Rational.of(columns),
                Rational.of(rows),
                aspect == null ? null : Rational.parse(aspect),
                Rational.parse(overscan));
    }

    private static PanelAxis axis(String start, String length, String extent, @Nullable Integer pixels, long offset) {
        return new PanelAxis(Rational.parse(start), Rational.parse(length), Rational.parse(extent), pixels, offset);
    }

    @Test
    void fillingCoversThePanelWhateverTheAspect() {
        assertThat(fit(AspectControl.FILL, WIDE, DisplayClass.TELEVISION, 720, 480, "4/3", "0"))
                .isEqualTo(new PanelFit(axis("0", "720", "1920", 1920, 0), axis("0", "480", "1080", 1080, 0)));
    }

    @Test
    void aNarrowPictureHasBarsAtItsSides() {
        // 4/3 · 1080 = 1440 columns, (1920 − 1440)/2 = 240 to the left.
        assertThat(fit(AspectControl.SIGNALLED, WIDE, DisplayClass.TELEVISION, 720, 480, "4/3", "0"))
                .isEqualTo(new PanelFit(axis("0", "720", "1440", 1440, 240), axis("0", "480", "1080", 1080, 0)));
    }

    @Test
    void aWidePictureHasBarsAboveAndBelow() {
        // 1280/(16/9) = 720 rows, (1024 − 720)/2 = 152 above.
        assertThat(fit(AspectControl.SIGNALLED, NARROW, DisplayClass.MONITOR, 1920, 1080, "16/9", "0"))
                .isEqualTo(new PanelFit(axis("0", "1920", "1280", 1280, 0), axis("0", "1080", "720", 720, 152)));
    }

    @Test
    void aPictureOfThePanelsOwnShapeHasNoBars() {
        assertThat(fit(AspectControl.SIGNALLED, WIDE, DisplayClass.TELEVISION, 1280, 720, "16/9", "0"))
                .isEqualTo(new PanelFit(axis("0", "1280", "1920", 1920, 0), axis("0", "720", "1080", 1080, 0)));
    }

    @Test
    void withoutASignalledAspectATelevisionFillsAndAMonitorTakesSamplesAsSquare() {
        assertThat(fit(AspectControl.SIGNALLED, WIDE, DisplayClass.TELEVISION, 640, 480, null, "0"))
                .isEqualTo(new PanelFit(axis("0", "640", "1920", 1920, 0), axis("0", "480", "1080", 1080, 0)));
        assertThat(fit(AspectControl.SIGNALLED, WIDE, DisplayClass.PROJECTOR, 640, 480, null, "0"))
                .isEqualTo(new PanelFit(axis("0", "640", "1920", 1920, 0), axis("0", "480", "1080", 1080, 0)));
        assertThat(fit(AspectControl.SIGNALLED, WIDE, DisplayClass.MONITOR, 640, 480, null, "0"))
                .isEqualTo(new PanelFit(axis("0", "640", "1440", 1440, 240), axis("0", "480", "1080", 1080, 0)));
    }

    @Test
    void oneToOneIsCentredAndHidesOnlyWhatThePanelLacks() {
        // (1920 − 720)/2 = 600 and (1080 − 480)/2 = 300; overscan does not apply.
        assertThat(fit(AspectControl.ONE_TO_ONE, WIDE, DisplayClass.TELEVISION, 720, 480, "4/3", "0.03"))
                .isEqualTo(new PanelFit(axis("0", "720", "720", 720, 600), axis("0", "480", "480", 480, 300)));
        assertThat(fit(AspectControl.ONE_TO_ONE, WIDE, DisplayClass.TELEVISION, 1920, 1080, "16/9", "0"))
                .isEqualTo(new PanelFit(axis("0", "1920", "1920", 1920, 0), axis("0", "1080", "1080", 1080, 0)));
        // 1920 columns on 1280: 320 lost at either side; 1080 rows on 1024: 28.
        assertThat(fit(AspectControl.ONE_TO_ONE, NARROW, DisplayClass.MONITOR, 1920, 1080, "16/9", "0"))
                .isEqualTo(new PanelFit(axis("320", "1280", "1280", 1280, 0), axis("28", "1024", "1024", 1024, 0)));
    }

    @Test
    void overscanHidesItsShareAtEachEdge() {
        // 3 % of 1280 and 720: 38.4 columns and 21.6 rows at each edge.
        assertThat(fit(AspectControl.FILL, WIDE, DisplayClass.TELEVISION, 1280, 720, "16/9", "0.03"))
                .isEqualTo(
                        new PanelFit(axis("38.4", "1203.2", "1920", 1920, 0), axis("21.6", "676.8", "1080", 1080, 0)));
    }

    @Test
    void aTubeHasNoGridAndIsMeasuredByItsHeight() {
        assertThat(fit(AspectControl.FILL, new Panel.Tube(Rational.of(4, 3)), DisplayClass.TUBE, 1, 240, null, "0.05"))
                .isEqualTo(new PanelFit(axis("0.05", "0.9", "4/3", null, 0), axis("12", "216", "1", null, 0)));
    }

    @Test
    void onlyWholeStartsAndEqualSizesAreOneToOne() {
        assertThat(axis("320", "1280", "1280", 1280, 0).isOneToOne()).isTrue();
        assertThat(axis("0.5", "1280", "1280", 1280, 0).isOneToOne()).isFalse();
        assertThat(axis("0", "1280", "1920", 1920, 0).isOneToOne()).isFalse();
    }
}
