package rasterfit.app.gear;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Conversion;
import rasterfit.gear.Level;
import rasterfit.gear.Link;

/** Reads cables, adapters and switches. */
final class LinkReader {
    private static final int MOST_CONVERSIONS = 32;

    private LinkReader() {}

    static @Nullable Link read(Place at, LinkBody body, @Nullable String defaultId) {
        String id = at.id(body.id(), defaultId);
        String name = at.member("name").text(body.name());
        if (body.lengthMm() != null) {
            at.member("lengthMm").number(body.lengthMm(), Range.LENGTH_MM);
        }
        var from = SharedReader.plug(
                at.member("from"), body.from().connector(), body.from().wiring());
        var to = SharedReader.plug(
                at.member("to"), body.to().connector(), body.to().wiring());
        boolean converts = body.converts() != null && !body.converts().isEmpty();
        // Of an adapter that converts nothing need pass unchanged.
        var carries = SharedReader.carried(at.member("carries"), body.carries(), converts ? 0 : 1);
        var bandwidth = SharedReader.fact(at.member("bandwidthHz"), body.bandwidthHz(), Range.BANDWIDTH);
        keep(at, body);
        var price = SharedReader.price(at.member("price"), body.price());
        List<Conversion> conversions =
                at.member("converts").each(body.converts(), 0, MOST_CONVERSIONS, LinkReader::conversion);
        var delay = SharedReader.fact(at.member("delayUs"), body.delayUs(), Range.MICROSECONDS);
        Integer ports = body.ports() == null ? null : at.member("ports").count(body.ports(), Range.PORTS);
        return at.make(
                () -> new Link(id, name, body.kind(), from, to, carries, conversions, price, bandwidth, delay, ports));
    }

    private static Conversion conversion(Place at, LinkBody.ConversionBody body) {
        LinkBody.SignalBody from = body.from();
        LinkBody.SignalBody to = body.to();
        if (from.equals(to)) {
            at.invalid("What goes in comes out; an adapter changes the format, the sync or the level.");
        }
        return new Conversion(
                from.format(),
                from.sync(),
                from.level(),
                to.format(),
                to.sync(),
                to.level() == null ? Level.VIDEO_75_OHM : to.level());
    }

    /** Members that nothing computes with yet still have to make sense. */
    private static void keep(Place at, LinkBody body) {
        at.member("sound").optionalToken(body.sound());
        SharedReader.supply(at.member("supply"), body.supply());
        Provenance.read(at.member("provenance"), body.provenance());
        if (body.kind() != Link.Kind.SWITCH && body.ports() != null) {
            at.member("ports").invalid("Only a switch has ports.");
        }
        if (body.kind() != Link.Kind.ADAPTER && body.converts() != null) {
            at.member("converts").invalid("Only an adapter converts.");
        }
    }
}
