package rasterfit.edid;

import java.util.List;

/**
 * An analog video input (E-EDID table 3.11).
 *
 * @param expectsSetup the black level is a blank-to-black pedestal rather than the blanking level
 * @param syncs in the order of {@link AnalogSync}; may be empty in a broken EDID
 * @param needsSerration vertical sync pulses must be serrated with composite sync or sync on green
 */
public record AnalogInput(AnalogLevel level, boolean expectsSetup, List<AnalogSync> syncs, boolean needsSerration) {
    public AnalogInput {
        syncs = List.copyOf(syncs);
    }
}
