package rasterfit.timing;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rasterfit.EdidDecode;

/** Thousands of random CVT and GTF timings against Debian's {@code edid-decode}, as {@link FormulaComparison} compares. */
class FormulaOracleTest {
    private static final int CVT_CASES = 6000;
    private static final int REDUCED_V3_CASES = 3000;
    private static final int GTF_CASES = 3000;
    /** Of these, for want of room. */
    private static final int GTF_WITHOUT_ROOM = 616;

    @Test
    void coordinatedTimingsAreThoseOfTheOracle() {
        List<FormulaCases.CvtCase> cases = new FormulaCases(FormulaComparison.CVT_SEED).cvt(CVT_CASES);
        FormulaComparison.coordinated(cases, printed(cases));
    }

    @Test
    void reducedBlankingOfVersion3IsThatOfTheOracle() {
        List<FormulaCases.CvtCase> cases =
                new FormulaCases(FormulaComparison.REDUCED_V3_SEED).reducedV3(REDUCED_V3_CASES);
        FormulaComparison.reducedV3(cases, printed(cases));
    }

    @Test
    void generalisedTimingsAreThoseOfTheOracle() {
        List<FormulaCases.GtfCase> cases = new FormulaCases(FormulaComparison.GTF_SEED).gtf(GTF_CASES);
        List<PrintedTiming> printed = PrintedTiming.read(EdidDecode.linesOfCalls(
                cases.stream().map(each -> "--gtf " + each.option()).toList()));
        FormulaComparison.generalised(cases, printed, GTF_WITHOUT_ROOM);
    }

    private static List<PrintedTiming> printed(List<FormulaCases.CvtCase> cases) {
        List<String> options = new ArrayList<>();
        cases.forEach(each -> options.addAll(List.of("--cvt", each.option())));
        return PrintedTiming.read(EdidDecode.lines(options));
    }
}
