package rasterfit.app.gear;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rasterfit.gear.Level;
import rasterfit.gear.Mode;
import rasterfit.gear.PictureShape;
import rasterfit.gear.SourceOutput;
import rasterfit.gear.Window;
import rasterfit.quantity.Frequency;
import rasterfit.quantity.Rational;

class SourceReaderTest {
    private static Mode mode(String more) {
        return Bodies.source("{\"name\": \"Quillon\", \"variants\": [{\"outputs\": ["
                        + "{\"connector\": \"SCART\", \"format\": \"RGB\"}], \"modes\": [{\"name\": \"m\","
                        + "\"lineStandard\": \"L525_60\", \"dotClockHz\": \"59062500/11\", \"dotsPerLine\": \"855/2\","
                        + "\"linesPerField\": \"262\", \"scan\": \"PROGRESSIVE\","
                        + "\"active\": {\"dots\": 256, \"lines\": 240, \"firstDot\": 65, \"firstLine\": 18}"
                        + more + "}]}]}")
                .variants()
                .get(0)
                .modes()
                .get(0);
    }

    @Test
    void exactQuantitiesStayExact() {
        assertThat(mode("").dotClock()).isEqualTo(Frequency.ofHz(59_062_500, 11));
        assertThat(mode("").dotsPerLine()).isEqualTo(Rational.of(855, 2));
    }

    @Test
    void whatIsAbsentTakesItsDocumentedDefault() {
        Mode mode = mode("");
        assertThat(mode.share()).isEqualTo(Rational.ONE);
        assertThat(mode.duringPlay()).isFalse();
        assertThat(mode.shape()).isEqualTo(PictureShape.TUBE_4_3);
        SourceOutput output = Bodies.source("{\"name\": \"Q\", \"variants\": [{\"outputs\": ["
                        + "{\"connector\": \"SCART\", \"format\": \"RGB\"}], \"modes\": [{\"name\": \"m\","
                        + "\"lineStandard\": \"OTHER\", \"dotClockHz\": \"6000000\", \"dotsPerLine\": \"384\","
                        + "\"linesPerField\": \"264\", \"scan\": \"PROGRESSIVE\","
                        + "\"active\": {\"dots\": 256, \"lines\": 224, \"firstDot\": 0, \"firstLine\": 0}}]}]}")
                .variants()
                .get(0)
                .outputs()
                .get(0);
        assertThat(output.id()).isEqualTo("output-1");
        assertThat(output.level()).isEqualTo(Level.VIDEO_75_OHM);
        assertThat(output.bandwidthHz().isUnknown()).isTrue();
    }

    @Test
    void withoutAUsedAreaTheActiveOneIsAssumed() {
        assertThat(mode("").used()).isEqualTo(new Window(256, 240, 65, 18));
        assertThat(mode("").usedAssumed()).isTrue();
    }

    @Test
    void aUsedAreaWithoutAPositionIsCentredTowardsTheStart() {
        Mode mode = mode(", \"used\": {\"dots\": 201, \"lines\": 225}");
        // 65 + ⌊55/2⌋ = 92; 18 + ⌊15/2⌋ = 25.
        assertThat(mode.used()).isEqualTo(new Window(201, 225, 92, 25));
        assertThat(mode.usedAssumed()).isTrue();
    }

    @Test
    void aUsedAreaInFullIsNotAssumed() {
        Mode mode = mode(", \"used\": {\"lines\": 224, \"firstLine\": 30}");
        assertThat(mode.used()).isEqualTo(new Window(256, 224, 65, 30));
        assertThat(mode.usedAssumed()).isFalse();
    }
}
