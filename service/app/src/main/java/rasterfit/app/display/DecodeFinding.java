package rasterfit.app.display;

import rasterfit.edid.EdidDefect;
import rasterfit.rule.EdidRules;
import rasterfit.rule.Finding;
import rasterfit.rule.Severity;
import rasterfit.rule.Stage;

/**
 * Something wrong with an EDID, or not read from it.
 *
 * @param block from 0, the base block
 * @param byteOffset within the block
 */
record DecodeFinding(String rule, Severity severity, Stage stage, String message, int block, int byteOffset) {
    static DecodeFinding of(EdidDefect defect) {
        Finding finding = EdidRules.finding(defect);
        return new DecodeFinding(
                finding.rule().id(),
                finding.rule().severity(),
                finding.rule().stage(),
                finding.message(),
                defect.blockIndex(),
                defect.byteOffset());
    }
}
