package rasterfit.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rasterfit.gear.Conversion;
import rasterfit.gear.Converter;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.gear.SyncKind;
import rasterfit.match.MatchRequest;
import rasterfit.quantity.Rational;

class ScenarioReaderTest {
    private static final String WHOLE = """
            # of the file
            A01 A sentence.
              console quillon out rgb own:av RGB+COMPOSITE_SYNC@LOGIC_5V bandwidth=4 mode 240p share=0.9 mode 480i share=0.1 play
              adapter pad own:av > SCART RGB+COMPOSITE_SYNC@LOGIC_5V=>RGB+COMPOSITE_SYNC price=12
              converter tarn in av SCART RGB+COMPOSITE_SYNC samples=858,1364 tolerates=NOTHING
                repeat 240>480,720 288>576 scale vic:16 lock=LOCKED:1000,FREE:2 out out HDMI
              television lowick in digital-1 HDMI lists=vic:4
              limit addedLatencyMs <= 5
              best: quillon:rgb > pad > tarn:av → out > lowick:digital-1
              # common practice
            """;

    @Test
    void aStatementMayGoOnInTheNextLineIfThatIsIndentedFurther() {
        Scenario scenario = read(WHOLE);
        assertThat(scenario.toString()).isEqualTo("A01 A sentence.");
        assertThat(scenario.source()).isEqualTo("common practice");
        assertThat(scenario.converters().get(0).clauses()).hasSize(2);
    }

    @Test
    void everythingThatTheEngineHasAPlaceForIsPassedOn() {
        MatchRequest request = read(WHOLE).request();
        assertThat(request.source().outputs().get(0).level()).isEqualTo(Level.LOGIC_5V);
        assertThat(request.source().modes()).extracting(Mode::duringPlay).containsExactly(false, true);
        assertThat(request.equipment().links().get(0).conversions())
                .containsExactly(new Conversion(
                        Format.RGB,
                        SyncKind.COMPOSITE_SYNC,
                        Level.LOGIC_5V,
                        Format.RGB,
                        SyncKind.COMPOSITE_SYNC,
                        Level.VIDEO_75_OHM));
        Converter converter = request.equipment().converters().get(0);
        assertThat(converter.processing())
                .hasExactlyElementsOfTypes(Processing.LineRepeat.class, Processing.RasterScale.class);
        assertThat(request.limits().get(0).value()).isEqualTo(Rational.of(5));
    }

    @Test
    void whatTheEngineHasNoPlaceForIsNamed() {
        assertThat(read(WHOLE).waiting()).containsExactly("tolerates");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            tube burdock           | valve burdock             | no.txt:4: "valve": no statement begins like this
            in av SCART RGB        | in av SCART               | no.txt:4: "av": an analog port names its signals
            in av SCART RGB        | in av SOCKET RGB          | no.txt:4: "SOCKET": not a connector
            in av SCART RGB        | in av SCART RGB+SYNC      | no.txt:4: "RGB+SYNC": No enum constant
            in av SCART RGB        | in av SCART RGB colour=no | no.txt:4: "colour=no": not a fact of this part
            in av SCART RGB        | in av SCART RGB lag=long  | no.txt:4: lag=long:
            in av SCART RGB        | in av SCART RGB VGA       | no.txt:4: "VGA": not understood here
            in av SCART RGB        | in av                     | no.txt:4: something is missing
            best:                  | worst:                    | no.txt:5: an expectation is one of
            best: quillon          | refused: a.b at NOWHERE   | no.txt:5: a refusal is written as rule at STAGE
            out rgb SCART RGB      | out rgb SCART RGB mode 9p | no.txt:3: "9p": not a class of modes
            console quillon        | tube quillon              | no.txt:3: "out": not a fact of this part
            A01 A sentence.        | A1 A sentence.            | no.txt:2: a scenario begins with a number
            '  # common practice'  | ''                        | no.txt:2: A01 names no source
            '  best: quillon:rgb > burdock:av' | ''            | no.txt:2: A01 has 0 expectations instead of one
            """)
    void whatCannotBeReadIsToldWithFileAndLine(String good, String bad, String told) {
        String text = """

                A01 A sentence.
                  console quillon out rgb SCART RGB
                  tube burdock in av SCART RGB
                  best: quillon:rgb > burdock:av
                  # common practice
                """;
        assertThat(text).contains(good);
        String broken = text.replace(good, bad);
        assertThatThrownBy(() -> ScenarioReader.read("no.txt", broken).forEach(Scenario::request))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith(told);
    }

    private static Scenario read(String text) {
        List<Scenario> scenarios = ScenarioReader.read("some.txt", text);
        assertThat(scenarios).hasSize(1);
        return scenarios.get(0);
    }
}
