package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;

/** Collects the defects of one reading, in the order in which they are met and never more than {@link #MOST}. */
final class DefectLog {
    static final int MOST = 256;

    private final List<EdidDefect> defects = new ArrayList<>();

    void add(DefectCode code, Block block, int byteOffset, String message) {
        add(code, block.index(), byteOffset, message);
    }

    void add(DefectCode code, int blockIndex, int byteOffset, String message) {
        if (defects.size() < MOST - 1) {
            defects.add(new EdidDefect(code, blockIndex, byteOffset, message));
        } else if (defects.size() == MOST - 1) {
            defects.add(new EdidDefect(
                    DefectCode.FURTHER_DEFECTS_OMITTED, blockIndex, byteOffset, "further defects are not listed"));
        }
    }

    List<EdidDefect> defects() {
        return List.copyOf(defects);
    }
}
