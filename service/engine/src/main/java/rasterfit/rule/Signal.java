package rasterfit.rule;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Conversion;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.SyncKind;

/**
 * A signal on its way.
 *
 * @param sync absent for digital links and where it is not stated
 * @param plug on which it now ends; absent where that is not known
 */
public record Signal(
        Format format,
        @Nullable SyncKind sync,
        Level level,
        @Nullable Plug plug) {

    /** As it leaves a link: converted, or the same on the link's other plug. */
    public Signal through(Link link) {
        return conversionIn(link)
                .map(made -> new Signal(made.toFormat(), made.toSync(), made.toLevel(), link.to()))
                .orElse(new Signal(format, sync, level, link.to()));
    }

    Optional<Conversion> conversionIn(Link link) {
        return link.conversions().stream()
                .filter(conversion -> conversion.takes(format, sync, level))
                .findFirst();
    }

    @Override
    public String toString() {
        return sync == null ? format.name() : format + " with " + sync;
    }
}
