package rasterfit.app.timing;

import java.math.BigDecimal;
import rasterfit.app.answer.Plain;
import rasterfit.gear.LineStandard;
import rasterfit.identify.SourceTiming;
import rasterfit.timing.Scan;

/** The timing of a console's mode without its picture, exact; the period is for comparison with an instrument. */
record SourceTimingAnswer(
        LineStandard lineStandard,
        String dotClockHz,
        String dotsPerLine,
        String linesPerField,
        Scan scan,
        String lineRateHz,
        BigDecimal linePeriodUs,
        String fieldRateHz) {

    static SourceTimingAnswer of(SourceTiming timing) {
        return new SourceTimingAnswer(
                timing.lineStandard(),
                Plain.exact(timing.dotClock()),
                timing.dotsPerLine().toString(),
                timing.linesPerField().toString(),
                timing.scan(),
                Plain.exact(timing.lineRate()),
                Plain.of(timing.lineRate().period().seconds().times(1_000_000)),
                Plain.exact(timing.fieldRate()));
    }
}
