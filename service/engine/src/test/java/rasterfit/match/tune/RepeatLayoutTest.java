package rasterfit.match.tune;

import static org.assertj.core.api.Assertions.assertThat;
import static rasterfit.Fractions.fraction;

import java.util.List;
import java.util.Random;
import org.apache.commons.numbers.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import rasterfit.gear.Fact;
import rasterfit.gear.LineStandard;
import rasterfit.gear.Processing;
import rasterfit.match.Latency;
import rasterfit.match.MatchRequest;
import rasterfit.match.Modes;
import rasterfit.match.PixelAspectConvention;
import rasterfit.match.Workbench;
import rasterfit.match.route.Route;
import rasterfit.match.route.RouteFinder;
import rasterfit.sim.LineRepeatSim;
import rasterfit.sim.LineRepeatSim.Outcome;
import rasterfit.sim.LineRepeatSim.Repeat;

/** When the first copy of a repeated line can begin, against the sample-by-sample simulation ({@link LineRepeatSim}). */
class RepeatLayoutTest {
    private static final int SAMPLES = 1364;

    /** @param latestStart lines after which the first copy begins */
    private static Layout.Added added(int copies, Fact latestStart) {
        Processing repeat = new Processing.LineRepeat(
                "repeat",
                List.of(new Processing.LineCounts(LineStandard.L525_60, 240, List.of(240 * copies))),
                null,
                latestStart,
                null,
                Processing.InterlacedFields.REFUSED,
                Fact.known(0));
        MatchRequest request = new Workbench()
                .modes(Modes.half525())
                .converters(Workbench.converter("repeater", Workbench.samples(SAMPLES), repeat))
                .request();
        Route route = RouteFinder.find(request, request.equipment().converters(), List.of())
                .get(0);
        Captured captured = Captured.of(request.source().modes(), PixelAspectConvention.BROADCAST);
        Layout layout = Layouts.of(route, captured).possible().get(0);
        return layout.added(Modes.half525(), 0, 0, 0, 0, Steps.SILENT);
    }

    private static BigFraction lines(rasterfit.quantity.Rational ms) {
        return fraction(ms.dividedBy(Modes.half525().lineRate().period().millis()));
    }

    @Test
    void theSoonestStartIsThatOfTheSimulationButForOneEmittedSample() {
        for (int copies = 2; copies <= 6; copies++) {
            BigFraction soonest = lines(added(copies, Fact.unknown()).ms().least());
            // Stored to the very end of the line, the last sample decides; it goes out once it has wholly arrived.
            Outcome wholeLine = LineRepeatSim.repeat(new Repeat(SAMPLES, 0, SAMPLES, copies));

            assertThat(wholeLine.start())
                    .as("%d copies", copies)
                    .isEqualTo(soonest.add(BigFraction.of(1, SAMPLES * copies)));
        }
    }

    @Test
    void noActivePartOfALineNeedsALaterStart() {
        Random random = new Random(20_240_630);
        for (int i = 0; i < 300; i++) {
            int copies = 2 + random.nextInt(5);
            int active = 1 + random.nextInt(SAMPLES);
            int first = random.nextInt(SAMPLES - active + 1);
            Outcome part = LineRepeatSim.repeat(new Repeat(SAMPLES, first, active, copies));

            assertThat(part.start())
                    .as("%d copies, %d samples from %d", copies, active, first)
                    .isLessThanOrEqualTo(
                            lines(added(copies, Fact.unknown()).ms().least()).add(BigFraction.of(1, SAMPLES * copies)));
        }
    }

    @Test
    void withoutAStatementBothEndsAreTold() {
        // 1 − 1/4 of a line, and one line (assumption).
        Latency ms = added(4, Fact.unknown()).ms();

        assertThat(lines(ms.least())).isEqualTo(BigFraction.of(3, 4));
        assertThat(lines(ms.greatest())).isEqualTo(BigFraction.ONE);
        assertThat(lines(ms.typical())).isEqualTo(BigFraction.of(7, 8));
    }

    @Test
    void aStatedStartCountsUnlessItIsImpossiblySoon() {
        assertThat(lines(added(4, Fact.known(3)).ms().least())).isEqualTo(BigFraction.of(3));
        assertThat(lines(added(4, Fact.known(3)).ms().greatest())).isEqualTo(BigFraction.of(3));
        assertThat(lines(added(4, Fact.known(0)).ms().greatest())).isEqualTo(BigFraction.of(3, 4));
    }

    @Test
    void theLinesHeldSufficeInTheSimulation() {
        for (int copies = 2; copies <= 6; copies++) {
            Integer held = added(copies, Fact.unknown()).bufferedLines();
            int peak = LineRepeatSim.repeat(new Repeat(SAMPLES, 0, SAMPLES, copies))
                    .peakSamples();

            assertThat(held).as("%d copies", copies).isNotNull();
            assertThat(peak).as("%d copies", copies).isLessThanOrEqualTo(held * SAMPLES);
        }
    }
}
