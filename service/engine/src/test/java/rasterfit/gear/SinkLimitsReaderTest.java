package rasterfit.gear;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rasterfit.edid.CtaBuilder;
import rasterfit.edid.DisplayIdBuilder;
import rasterfit.edid.EdidBuilder;
import rasterfit.edid.EdidReader;
import rasterfit.edid.EdidReading;
import rasterfit.gear.SinkLimits.ListedRaster;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;
import rasterfit.timing.Cta861;

/** EDIDs written from the standards' tables, read as what a display input takes. */
class SinkLimitsReaderTest {
    private static EdidReading read(EdidBuilder edid) {
        return EdidReader.read(edid.build());
    }

    @Test
    void aDigitalInputWithAnHdmiBlockTakesTmdsUpToItsClock() {
        EdidReading edid =
                read(EdidBuilder.digital(3).extension(new CtaBuilder().video(16).hdmi(225)));
        SinkLimits sink = SinkLimitsReader.read(edid);
        assertThat(sink.link()).isEqualTo(LinkKind.HDMI);
        // HDMI 1.3a table 8-6.
        assertThat(sink.maxTmdsClock()).isEqualTo(Frequency.ofHz(225_000_000));
        assertThat(SinkLimitsReader.accepts(edid)).containsExactly(new Carried(Format.TMDS, Set.of()));
    }

    @Test
    void withoutAnHdmiBlockItIsDviAt165MHz() {
        SinkLimits sink = SinkLimitsReader.read(read(EdidBuilder.digital(3)));
        assertThat(sink.link()).isEqualTo(LinkKind.DVI);
        // HDMI 1.3a §8.3.
        assertThat(sink.maxTmdsClock()).isEqualTo(Frequency.ofHz(165_000_000));
        assertThat(sink.fieldRate()).isNull();
        assertThat(sink.listed()).isEmpty();
    }

    /** CTA-861-I table 1: 148.5 MHz; that its 1/1.001 kin counts too is a matter of acceptance. */
    @Test
    void aVicListsItsPrintedRateUnderItsLabelWithItsPictureAspect() {
        SinkLimits sink = SinkLimitsReader.read(read(EdidBuilder.digital(3).extension(new CtaBuilder().video(16, 19))));
        assertThat(sink.listed()).extracting(ListedRaster::label).containsExactly("vic:16", "vic:19");
        assertThat(sink.listed().get(0).raster().pixelClock()).isEqualTo(Frequency.ofHz(148_500_000));
        assertThat(sink.listed().get(0).pictureAspect()).isEqualTo(Rational.of(16, 9));
    }

    @Test
    void halfHeightVicsListAllTheirLineCounts() {
        SinkLimits sink = SinkLimitsReader.read(read(EdidBuilder.digital(3).extension(new CtaBuilder().video(23))));
        // CTA-861-I table 1 and §4: 312, 313 and 314 lines.
        assertThat(sink.listed().stream()
                        .map(listed -> listed.raster().verticalTotal())
                        .distinct())
                .containsExactly(Rational.of(312), Rational.of(313), Rational.of(314));
    }

    @Test
    void detailedStandardAndEstablishedTimingsAreListedWithoutAnAspect() {
        SinkLimits sink = SinkLimitsReader.read(read(EdidBuilder.digital(4)
                .standard(1280, 2, 60)
                .established(0x20, 0, 0)
                .detailed(Cta861.find(16).orElseThrow().timing(), 886, 498)));
        assertThat(sink.listed())
                .extracting(ListedRaster::label)
                .containsExactly("detailed:1", "standard:1", "established:3");
        assertThat(sink.listed()).allMatch(listed -> listed.pictureAspect() == null);
        // DMT 1.13: 23h is 1280 × 1024 at 108 MHz, 04h 640 × 480 at 25.175 MHz.
        assertThat(sink.listed().get(1).raster().pixelClock()).isEqualTo(Frequency.ofHz(108_000_000));
        assertThat(sink.listed().get(2).raster().pixelClock()).isEqualTo(Frequency.ofHz(25_175_000));
    }

    @Test
    void aVicThatDisplayIdNamesListsAllItsLineCountsWithItsAspect() {
        // DisplayID type VIII (tag 23h), flags 40h: VICs. CTA-861-I table 1: VIC 8 has 262 and 263 lines and is 4:3.
        byte[] section =
                DisplayIdBuilder.version(0x20).block(0x23, 0x40, new int[] {8}).build();
        SinkLimits sink = SinkLimitsReader.read(read(EdidBuilder.digital(4).extension(section)));
        assertThat(sink.listed().stream().map(listed -> listed.raster().verticalTotal()))
                .containsExactly(Rational.of(262), Rational.of(263));
        assertThat(sink.listed()).allMatch(listed -> Rational.of(4, 3).equals(listed.pictureAspect()));
    }

    @Test
    void whatIsTakenIn420AloneIsNotListed() {
        SinkLimits sink = SinkLimitsReader.read(
                read(EdidBuilder.digital(3).extension(new CtaBuilder().video(16).dataBlock(7, 14, 97))));
        assertThat(sink.listed()).extracting(ListedRaster::label).containsExactly("vic:16");
    }

    @Test
    void limitsAreAsDeclaredAndContinuousOnlyIfPromised() {
        SinkLimits sink = SinkLimitsReader.read(
                read(EdidBuilder.digital(4).continuousFrequency().rangeLimits(48, 144, 30, 160, 600)));
        assertThat(sink.fieldRate()).isEqualTo(new FrequencyRange(Frequency.ofHz(48), Frequency.ofHz(144)));
        assertThat(sink.lineRate()).isEqualTo(new FrequencyRange(Frequency.ofHz(30_000), Frequency.ofHz(160_000)));
        assertThat(sink.maxPixelClock()).isEqualTo(Frequency.ofHz(600_000_000));
        assertThat(sink.continuous()).isTrue();
        // In EDID 1.3 the same bit only promises default GTF (E-EDID table 3.14).
        assertThat(SinkLimitsReader.read(read(EdidBuilder.digital(3).continuousFrequency()))
                        .continuous())
                .isFalse();
    }

    @Test
    void anAnalogInputTakesRgbWithTheSyncsOfItsBaseBlock() {
        // E-EDID table 3.11: bit 3 separate, bit 2 composite, bit 1 on green.
        EdidReading edid = read(EdidBuilder.analog(3).videoInput(0x0E).rangeLimits(50, 90, 30, 70, 110));
        assertThat(SinkLimitsReader.accepts(edid))
                .containsExactly(new Carried(
                        Format.RGB, Set.of(SyncKind.SEPARATE_SYNC, SyncKind.COMPOSITE_SYNC, SyncKind.SYNC_ON_GREEN)));
        SinkLimits sink = SinkLimitsReader.read(edid);
        assertThat(sink.link()).isNull();
        assertThat(sink.maxTmdsClock()).isNull();
        assertThat(Objects.requireNonNull(SinkLimitsReader.analogLineRate(edid)).min())
                .isEqualTo(Frequency.ofHz(29_500));
        assertThat(Objects.requireNonNull(SinkLimitsReader.analogFieldRate(edid))
                        .max())
                .isEqualTo(Frequency.ofHz(181, 2));
    }

    @Test
    void withoutRangeLimitsThereIsNoScanRange() {
        EdidReading edid = read(EdidBuilder.analog(3));
        assertThat(SinkLimitsReader.analogLineRate(edid)).isNull();
        assertThat(SinkLimitsReader.analogFieldRate(edid)).isNull();
    }
}
