package rasterfit.replay;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import rasterfit.sim.FreeRunSim;
import rasterfit.sim.LineBufferSim;
import rasterfit.sim.LineRepeatSim;
import rasterfit.sim.ResampleSim;

/** Runs every simulation once: many setups of an answer differ in one stage only. */
final class Simulated {
    private final Map<Object, Object> done = new HashMap<>();

    private record Way(Object picture, ResampleSim.Placement placement, ResampleSim.Panel panel) {}

    private record FreeWay(String kind, FreeRunSim.Setup setup) {}

    @SuppressWarnings("unchecked")
    private <K, V> V once(K key, Function<K, V> simulation) {
        Object known = done.get(key);
        if (known == null) {
            known = simulation.apply(key);
            done.put(key, known);
        }
        return (V) known;
    }

    ResampleSim.Seen dots(ResampleSim.Sampling sampling, ResampleSim.Placement placement, ResampleSim.Panel panel) {
        return once(new Way(sampling, placement, panel), way -> ResampleSim.dots(sampling, placement, panel));
    }

    ResampleSim.Seen lines(ResampleSim.Lines lines, ResampleSim.Placement placement, ResampleSim.Panel panel) {
        return once(new Way(lines, placement, panel), way -> ResampleSim.lines(lines, placement, panel));
    }

    LineBufferSim.Outcome locked(LineBufferSim.Locked in) {
        return once(in, LineBufferSim::locked);
    }

    LineBufferSim.BobOutcome bob(LineBufferSim.Bob in) {
        return once(in, LineBufferSim::bob);
    }

    LineRepeatSim.Outcome repeat(LineRepeatSim.Repeat in) {
        return once(in, LineRepeatSim::repeat);
    }

    FreeRunSim.StoredOutcome wholeFields(FreeRunSim.Setup in) {
        return once(new FreeWay("fields", in), way -> FreeRunSim.wholeFields(in));
    }

    FreeRunSim.SingleStoreOutcome singleStore(FreeRunSim.Setup in) {
        return once(new FreeWay("store", in), way -> FreeRunSim.singleStore(in));
    }
}
