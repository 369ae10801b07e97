package rasterfit.replay;

import static rasterfit.Fractions.fraction;

import java.util.Objects;
import org.apache.commons.numbers.fraction.BigFraction;
import rasterfit.gear.Assumptions;
import rasterfit.gear.Mode;
import rasterfit.gear.Processing;
import rasterfit.match.Settings;
import rasterfit.sim.LineRepeatSim;
import rasterfit.sim.LineRepeatSim.Outcome;
import rasterfit.sim.LineRepeatSim.Repeat;

/** Digitised lines sent on, once or several times each. */
final class RepeatDelay {
    private RepeatDelay() {}

    static Delay measure(Group group, Mode mode, Processing processing, BigFraction electronics, Simulated simulated) {
        Settings settings = group.setting().settings();
        int samples = Objects.requireNonNull(settings.samplesPerLine());
        int copies = Objects.requireNonNull(settings.lineRepetition());
        Outcome outcome = simulated.repeat(new Repeat(samples, 0, samples, copies));
        // A real sample must have come wholly before it leaves: one emitted sample later than lines that flow.
        BigFraction soonest = outcome.start().subtract(BigFraction.of(1, samples * copies));
        BigFraction least = soonest;
        BigFraction latest = soonest;
        if (processing instanceof Processing.LineRepeat repeat) {
            // Unless the device says when it begins at the latest, that is when the whole line has come, which always
            // suffices; then it may begin at any moment between.
            BigFraction stated = fraction(repeat.latestStartLines()
                    .orAssume(Assumptions.LATEST_START_LINES)
                    .greatest());
            latest = stated.subtract(soonest).signum() > 0 ? stated : soonest;
            least = repeat.latestStartLines().isUnknown() ? soonest : latest;
        }
        BigFraction lineMs = BigFraction.of(1000).divide(fraction(mode.lineRate().hz()));
        BigFraction typical = least.add(latest).divide(2);
        int held = LineRepeatSim.peakLines(latest);
        boolean keepsLines = processing instanceof Processing.LineRepeat;
        // Sent as soon as possible, no more samples are held than those lines have.
        int heldAtOnce = -Math.floorDiv(-outcome.peakSamples(), samples);
        return new Delay(
                Delay.flat(
                        least.multiply(lineMs).add(electronics),
                        typical.multiply(lineMs).add(electronics),
                        latest.multiply(lineMs).add(electronics)),
                keepsLines ? held : null,
                keepsLines ? heldAtOnce : 0,
                null);
    }
}
