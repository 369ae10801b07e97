package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

/** Worked examples of the standards, what may be asked of the formulas, and what they refuse. */
class FormulaRequestsTest {
    private static final Frequency SIXTY = Frequency.ofHz(60);

    @Test
    void reducedBlankingOfVersion3HasTheClocksOfDisplayId() {
        // DisplayID 2.1a tables 4-23 and 4-52: 3840 × 2160, 3920 pixels per line, 522.798 MHz at 60 Hz, 1076.182 at
        // 120.
        RasterTiming at60 = Cvt.timing(CvtRequest.progressive(3840, 2160, SIXTY, CvtBlanking.REDUCED_V3));
        assertThat(at60.horizontalTotal()).isEqualTo(3920);
        assertThat(at60.pixelClock()).isEqualTo(Frequency.ofHz(522_798_000));
        RasterTiming at120 =
                Cvt.timing(CvtRequest.progressive(3840, 2160, Frequency.ofHz(120), CvtBlanking.REDUCED_V3));
        assertThat(at120.horizontalTotal()).isEqualTo(3920);
        assertThat(at120.pixelClock()).isEqualTo(Frequency.ofHz(1_076_182_000));
    }

    @Test
    void aClockThatIsAWholeNumberOfStepsStaysThere() {
        // 1920 × 1080 at 50 Hz: 2000 · 1106 · 50 = 110.6 MHz exactly, from which version 2 has nothing to round off.
        RasterTiming timing =
                Cvt.timing(CvtRequest.progressive(1920, 1080, Frequency.ofHz(50), CvtBlanking.REDUCED_V2));
        assertThat(timing.pixelClock()).isEqualTo(Frequency.ofHz(110_600_000));
        assertThat(timing.fieldRate()).isEqualTo(Frequency.ofHz(50));
    }

    @Test
    void earlySyncLeavesOneLineOfFrontPorch() {
        // CVT 2.0: half of the 15 lines wanted is 7, but 15 − 8 − 7 leaves none, so 6; of 62 lines half is 31.
        RasterTiming shortest = Cvt.timing(
                CvtRequest.progressive(576, 360, Frequency.ofHz(60), new CvtBlanking.ReducedV3(176, 670, true)));
        assertThat(shortest.verticalFrontPorch()).isEqualTo(1);
        assertThat(shortest.verticalTotal() - shortest.verticalActive()).isEqualTo(9 + shortest.verticalBackPorch());
        RasterTiming longer =
                Cvt.timing(CvtRequest.progressive(3840, 2160, SIXTY, new CvtBlanking.ReducedV3(80, 460, true)));
        assertThat(longer.verticalBackPorch()).isEqualTo(31);
        assertThat(longer.verticalFrontPorch()).isEqualTo(62 - 31 - 8);
    }

    @Test
    void earlySyncStandsInTheMiddleOfTheBlankingWanted() {
        // As edid-decode prints them with rb=3,early-vsync: 1 + 8 + 6 lines are the least, of which 2, 6 and 9 are
        // wanted.
        CvtBlanking early = new CvtBlanking.ReducedV3(80, 460, true);
        assertThat(Cvt.timing(CvtRequest.progressive(640, 64, SIXTY, early)).verticalBackPorch())
                .isEqualTo(1);
        assertThat(Cvt.timing(CvtRequest.progressive(640, 200, SIXTY, early)).verticalBackPorch())
                .isEqualTo(3);
        assertThat(Cvt.timing(CvtRequest.progressive(640, 300, SIXTY, early)).verticalBackPorch())
                .isEqualTo(4);
    }

    @Test
    void aBackPorchOfNoLinesIsStillOne() {
        // As edid-decode prints --gtf w=640,h=100,fps=52,secondary,C=40,M=0,K=128,J=20: 64/72/136, 1/3/0 lines.
        RasterTiming timing = Gtf.timing(
                new GtfRequest(640, 100, Frequency.ofHz(52), Scan.PROGRESSIVE, false, curve("40", "0", "128", "20")));
        assertThat(timing.verticalBackPorch()).isZero();
        assertThat(timing.horizontalBackPorch()).isEqualTo(136);
    }

    @Test
    void marginsLieWithinThePorches() {
        // CVT 1.2: 1.8 % of 1024 pixels, 18.4, is two cells of 8; of 768 lines 13.8, cut to 13. GTF 1.1 rounds it to
        // 14.
        CvtRequest with = new CvtRequest(1024, 768, SIXTY, Scan.PROGRESSIVE, true, CvtBlanking.REDUCED_V1);
        assertThat(Cvt.border(with)).isEqualTo(new Border(16, 13));
        RasterTiming timing = Cvt.timing(with);
        assertThat(timing.horizontalFrontPorch()).isEqualTo(48 + 16);
        assertThat(timing.horizontalBackPorch()).isEqualTo(80 + 16);
        assertThat(timing.verticalFrontPorch()).isEqualTo(3 + 13);
        assertThat(timing.horizontalTotal()).isEqualTo(1024 + 160 + 32);
        assertThat(Gtf.border(new GtfRequest(1024, 768, SIXTY, Scan.PROGRESSIVE, true, null)))
                .isEqualTo(new Border(16, 14));
        assertThat(Cvt.border(CvtRequest.progressive(1024, 768, SIXTY, CvtBlanking.REDUCED_V1)))
                .isEqualTo(Border.NONE);
    }

    @Test
    void sizesAreRoundedToCellsAsEachStandardDoes() {
        assertThat(Cvt.timing(CvtRequest.progressive(1366, 768, SIXTY, CvtBlanking.ORDINARY))
                        .horizontalActive())
                .isEqualTo(1360);
        assertThat(Cvt.timing(CvtRequest.progressive(1366, 768, SIXTY, CvtBlanking.REDUCED_V2))
                        .horizontalActive())
                .isEqualTo(1366);
        assertThat(Gtf.timing(GtfRequest.progressive(1366, 768, SIXTY)).horizontalActive())
                .isEqualTo(1368);
        CvtRequest oddLines =
                new CvtRequest(1024, 769, Frequency.ofHz(87), Scan.INTERLACED, false, CvtBlanking.ORDINARY);
        assertThat(Cvt.timing(oddLines).verticalActive()).isEqualTo(768);
        GtfRequest oddField = new GtfRequest(1024, 769, Frequency.ofHz(87), Scan.INTERLACED, false, null);
        assertThat(Gtf.timing(oddField).verticalActive()).isEqualTo(770);
    }

    @Test
    void aSecondaryCurveTurnsThePolaritiesRound() {
        // GTF 1.1 §4: with the default curve −/+, with a secondary one +/−, whatever its numbers are.
        RasterTiming usual = Gtf.timing(GtfRequest.progressive(1280, 1024, SIXTY));
        RasterTiming secondary =
                Gtf.timing(new GtfRequest(1280, 1024, SIXTY, Scan.PROGRESSIVE, false, GtfCurve.DEFAULT));
        assertThat(usual.horizontalPolarity()).isEqualTo(Polarity.NEGATIVE);
        assertThat(usual.verticalPolarity()).isEqualTo(Polarity.POSITIVE);
        assertThat(secondary.horizontalPolarity()).isEqualTo(Polarity.POSITIVE);
        assertThat(secondary.verticalPolarity()).isEqualTo(Polarity.NEGATIVE);
        assertThat(secondary.raster()).isEqualTo(usual.raster());
    }

    @Test
    void limitsAreTheirOwnLastAllowedValues() {
        assertThatCode(() -> CvtRequest.progressive(8, 1, Frequency.ofHz(1), CvtBlanking.REDUCED_V2))
                .doesNotThrowAnyException();
        RasterTiming greatest = Cvt.timing(CvtRequest.progressive(65_536, 65_536, Frequency.ofHz(1024), widestV3()));
        assertThat(greatest.horizontalTotal()).isEqualTo(65_536 + 200);
        assertThat(greatest.fieldRate().hz()).isGreaterThanOrEqualTo(Rational.of(1024));
        assertRefused(() -> CvtRequest.progressive(7, 480, SIXTY, CvtBlanking.ORDINARY), "pixels");
        assertRefused(() -> CvtRequest.progressive(65_537, 480, SIXTY, CvtBlanking.ORDINARY), "pixels");
        assertRefused(() -> CvtRequest.progressive(640, 0, SIXTY, CvtBlanking.ORDINARY), "lines");
        assertRefused(() -> CvtRequest.progressive(640, 65_537, SIXTY, CvtBlanking.ORDINARY), "lines");
        assertRefused(() -> CvtRequest.progressive(640, 480, Frequency.ofHz(999, 1000), CvtBlanking.ORDINARY), "rates");
        assertRefused(
                () -> CvtRequest.progressive(640, 480, Frequency.ofHz(1_024_001, 1000), CvtBlanking.ORDINARY), "rates");
        assertRefused(() -> new GtfRequest(640, 1, SIXTY, Scan.INTERLACED, false, null), "lines of a frame lie from 2");
        assertRefused(() -> GtfRequest.progressive(640, 480, Frequency.ofHz(1025)), "rates");
    }

    @Test
    void laterReducedBlankingIsProgressiveWithoutMargins() {
        assertRefused(
                () -> new CvtRequest(640, 480, SIXTY, Scan.INTERLACED, false, CvtBlanking.REDUCED_V2), "progressive");
        assertRefused(() -> new CvtRequest(640, 480, SIXTY, Scan.PROGRESSIVE, true, CvtBlanking.REDUCED_V3), "margins");
        assertThatCode(() -> new CvtRequest(640, 480, SIXTY, Scan.INTERLACED, true, CvtBlanking.REDUCED_V1))
                .doesNotThrowAnyException();
    }

    @Test
    void blankingOfVersion3LiesWithinWhatDisplayIdCanState() {
        assertRefused(() -> new CvtBlanking.ReducedV3(72, 460, false), "from 80 to 200 pixels");
        assertRefused(() -> new CvtBlanking.ReducedV3(208, 460, false), "from 80 to 200 pixels");
        assertRefused(() -> new CvtBlanking.ReducedV3(84, 460, false), "steps of 8");
        assertRefused(() -> new CvtBlanking.ReducedV3(80, 299, false), "from 300 to 705");
        assertRefused(() -> new CvtBlanking.ReducedV3(80, 706, false), "from 300 to 705");
        assertThatCode(() -> new CvtBlanking.ReducedV3(80, 300, false)).doesNotThrowAnyException();
    }

    @Test
    void aCurveLiesWithinWhatAnEdidCanState() {
        assertRefused(() -> curve("128", "600", "128", "20"), "C of");
        assertRefused(() -> curve("40", "65536", "128", "20"), "M of");
        assertRefused(() -> curve("40", "600", "256", "20"), "K of");
        assertRefused(() -> curve("40", "600", "128", "-1/2"), "J of");
        assertThatCode(() -> curve("255/2", "65535", "255", "255/2")).doesNotThrowAnyException();
    }

    @Test
    void aTimingWithoutRoomForItsBlankingIsRefused() {
        assertRefused(
                () -> Cvt.timing(CvtRequest.progressive(64, 480, SIXTY, CvtBlanking.ORDINARY)), "horizontal sync");
        // At 15.7 kHz the default curve leaves 10.8 % of a line, of which sync takes 8 % and the back porch half.
        assertRefused(
                () -> Gtf.timing(new GtfRequest(640, 480, SIXTY, Scan.INTERLACED, false, null)), "horizontal sync");
        assertRefused(() -> Gtf.timing(GtfRequest.progressive(8, 480, SIXTY)), "horizontal sync");
        assertRefused(() -> Gtf.timing(GtfRequest.progressive(640, 100, Frequency.ofHz(20))), "vertical back porch");
        assertRefused(() -> Gtf.timing(with(curve("0", "0", "0", "0"))), "leaves no blanking");
        assertRefused(() -> Gtf.timing(with(curve("40", "65535", "255", "20"))), "leaves no blanking");
        assertRefused(() -> Gtf.timing(with(curve("127", "0", "0", "127"))), "no time for the picture");
        assertRefused(() -> Gtf.timing(with(curve("100", "0", "0", "100"))), "no time for the picture");
        assertRefused(() -> Gtf.timing(with(curve("99.9999", "0", "0", "99.9999"))), "no time for the picture");
    }

    @Test
    void aClockThatWouldBeRoundedToNothingIsRefused() {
        // CVT 1.2 §5.3 by hand: (8 + 160) pixels · (6 + 14) lines · 60 Hz = 201.6 kHz, cut to steps of 250 kHz.
        assertRefused(() -> Cvt.timing(CvtRequest.progressive(8, 6, SIXTY, CvtBlanking.REDUCED_V1)), "250000 Hz");
        // At 74 Hz 248.64 kHz are still too few; at 75 Hz, 252 kHz, there is one step.
        assertRefused(
                () -> Cvt.timing(CvtRequest.progressive(8, 6, Frequency.ofHz(74), CvtBlanking.REDUCED_V1)),
                "250000 Hz");
        assertThat(Cvt.timing(CvtRequest.progressive(8, 6, Frequency.ofHz(75), CvtBlanking.REDUCED_V1))
                        .pixelClock())
                .isEqualTo(Frequency.ofHz(250_000));
    }

    @Test
    void aBorderIsNotNegative() {
        assertRefused(() -> new Border(-1, 0), "negative");
        assertRefused(() -> new Border(0, -1), "negative");
    }

    private static GtfRequest with(GtfCurve curve) {
        return new GtfRequest(640, 480, SIXTY, Scan.PROGRESSIVE, false, curve);
    }

    private static GtfCurve curve(String c, String m, String k, String j) {
        return new GtfCurve(Rational.parse(c), Rational.parse(m), Rational.parse(k), Rational.parse(j));
    }

    private static CvtBlanking widestV3() {
        return new CvtBlanking.ReducedV3(200, 705, false);
    }

    private static void assertRefused(Runnable request, String because) {
        assertThatThrownBy(request::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(because);
    }
}
