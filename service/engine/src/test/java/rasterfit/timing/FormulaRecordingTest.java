package rasterfit.timing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The first of the random cases against what Debian's {@code edid-decode} (2022-03-15) printed for them, recorded, so that they
 * are checked where the tool is not installed. In the recordings each print follows the option that asked for it.
 */
class FormulaRecordingTest {
    private static final int CASES = 200;
    /** Of these, for want of room, by the prints. */
    private static final int GTF_WITHOUT_ROOM = 45;

    @Test
    void coordinatedTimingsAreThoseRecorded() throws IOException {
        List<FormulaCases.CvtCase> cases = new FormulaCases(FormulaComparison.CVT_SEED).cvt(CASES);
        List<String> options =
                cases.stream().map(each -> "--cvt " + each.option()).toList();
        FormulaComparison.coordinated(cases, recorded("edid-decode-cvt.txt", options));
    }

    @Test
    void reducedBlankingOfVersion3IsThatRecorded() throws IOException {
        List<FormulaCases.CvtCase> cases = new FormulaCases(FormulaComparison.REDUCED_V3_SEED).reducedV3(CASES);
        List<String> options =
                cases.stream().map(each -> "--cvt " + each.option()).toList();
        FormulaComparison.reducedV3(cases, recorded("edid-decode-cvt-rb3.txt", options));
    }

    @Test
    void generalisedTimingsAreThoseRecorded() throws IOException {
        List<FormulaCases.GtfCase> cases = new FormulaCases(FormulaComparison.GTF_SEED).gtf(CASES);
        List<String> options =
                cases.stream().map(each -> "--gtf " + each.option()).toList();
        FormulaComparison.generalised(cases, recorded("edid-decode-gtf.txt", options), GTF_WITHOUT_ROOM);
    }

    private static List<PrintedTiming> recorded(String resource, List<String> options) throws IOException {
        List<String> asked = new ArrayList<>();
        List<String> printed = new ArrayList<>();
        try (InputStream in = FormulaRecordingTest.class.getResourceAsStream(resource)) {
            assertThat(in).as(resource).isNotNull();
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .forEach(line -> (line.startsWith("--") ? asked : printed).add(line));
        }
        assertThat(asked).as("options of the recording").isEqualTo(options);
        return PrintedTiming.read(printed);
    }
}
