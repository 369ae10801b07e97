package rasterfit.rule;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.ColourEncoding;
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
 * @param encoding of a composite kind; absent for others and where it is not known
 */
public record Signal(
        Format format,
        @Nullable SyncKind sync,
        Level level,
        @Nullable Plug plug,
        @Nullable ColourEncoding encoding) {

    /** One without a colour encoding. */
    public Signal(Format format, @Nullable SyncKind sync, Level level, @Nullable Plug plug) {
        this(format, sync, level, plug, null);
    }

    /** As it leaves a link: converted, or the same on the link's other plug. */
    public Signal through(Link link) {
        return conversionIn(link)
                .map(made -> new Signal(
                        made.toFormat(),
                        made.toSync(),
                        made.toLevel(),
                        link.to(),
                        made.toFormat().hasColourEncoding() ? encoding : null))
                .orElse(new Signal(format, sync, level, link.to(), encoding));
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
