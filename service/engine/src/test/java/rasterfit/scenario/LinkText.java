package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;

/** {@code lead|adapter|switch id CONNECTOR > CONNECTOR SIGNAL ... CONVERSION ... fact ...}. */
record LinkText(
        Link.Kind kind,
        Word id,
        Plug from,
        Plug to,
        List<SignalText> carries,
        List<ConversionText> conversions,
        Facts facts) {

    static final Map<String, Link.Kind> KINDS =
            Map.of("lead", Link.Kind.CABLE, "adapter", Link.Kind.ADAPTER, "switch", Link.Kind.SWITCH);

    static LinkText read(Link.Kind kind, Words words) {
        Word id = words.take();
        Plug from = PortText.plug(words.take());
        words.expect(">");
        Plug to = PortText.plug(words.take());
        List<SignalText> carries = new ArrayList<>();
        List<ConversionText> conversions = new ArrayList<>();
        while (words.hasNext()) {
            String next = words.peek().text();
            if (ConversionText.isOne(next)) {
                conversions.add(ConversionText.read(words.take()));
            } else if (SignalText.isOne(next)) {
                carries.add(SignalText.read(words.take()));
            } else {
                break;
            }
        }
        if (carries.isEmpty() && conversions.isEmpty()) {
            throw id.fault("a link names what it carries or converts");
        }
        return new LinkText(
                kind, id, from, to, List.copyOf(carries), List.copyOf(conversions), Facts.take(words, Vocabulary.LINK));
    }
}
