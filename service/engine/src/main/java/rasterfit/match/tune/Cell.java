package rasterfit.match.tune;

import org.jspecify.annotations.Nullable;
import rasterfit.rule.Refusal;
import rasterfit.rule.Rules;

/** What every row of a table has: whether it is refused, by which rule, and by how much. */
abstract class Cell {
    /** Higher than the position of any rule. */
    static final int OPEN = Integer.MAX_VALUE;

    final @Nullable Refusal refusal;
    final int code;
    final double miss;

    Cell(@Nullable Refusal refusal) {
        this.refusal = refusal;
        this.code = refusal == null ? OPEN : Rules.position(refusal.rule());
        this.miss = refusal == null ? 0 : refusal.miss();
    }
}
