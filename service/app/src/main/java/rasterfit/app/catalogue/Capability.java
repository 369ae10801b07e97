package rasterfit.app.catalogue;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.Format;
import rasterfit.gear.FrequencyRange;
import rasterfit.gear.Plug;

/**
 * Something that gear is searched by: a connector, and what goes through it.
 *
 * @param format absent where none is known
 * @param lineRate absent where no limits are known
 */
record Capability(
        String connector, @Nullable Format format, @Nullable FrequencyRange lineRate) {

    static List<Capability> of(Plug plug, List<Carried> carried, @Nullable FrequencyRange lineRate) {
        List<Capability> capabilities = new ArrayList<>();
        for (Carried one : carried) {
            capabilities.add(new Capability(plug.connector().name(), one.format(), lineRate));
        }
        return capabilities;
    }
}
