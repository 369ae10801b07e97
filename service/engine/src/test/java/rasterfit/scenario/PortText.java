package rasterfit.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Carried;
import rasterfit.gear.Connector;
import rasterfit.gear.Format;
import rasterfit.gear.Level;
import rasterfit.gear.LinkKind;
import rasterfit.gear.Plug;

/**
 * {@code in|out id CONNECTOR/WIRING SIGNAL ... fact ...}. A digital connector carries TMDS without saying so.
 *
 * @param signals at least one
 */
record PortText(Word id, Plug plug, List<SignalText> signals, Facts facts) {
    private static final Map<String, LinkKind> DIGITAL = Map.of("HDMI", LinkKind.HDMI, "DVI", LinkKind.DVI);

    static PortText read(Words words, Vocabulary vocabulary) {
        Word id = words.take();
        Plug plug = plug(words.take());
        List<SignalText> signals = new ArrayList<>();
        while (words.hasNext() && SignalText.isOne(words.peek().text())) {
            signals.add(SignalText.read(words.take()));
        }
        if (signals.isEmpty()) {
            if (!DIGITAL.containsKey(plug.connector().name())) {
                throw id.fault("an analog port names its signals");
            }
            signals.add(new SignalText(Format.TMDS, Set.of(), Set.of(), null, Level.VIDEO_75_OHM, id));
        }
        return new PortText(id, plug, List.copyOf(signals), Facts.take(words, vocabulary));
    }

    static Plug plug(Word word) {
        String[] parts = word.text().split("/", 2);
        if (!Connector.isKnown(parts[0])) {
            throw word.fault("not a connector");
        }
        return new Plug(new Connector(parts[0]), parts.length == 1 ? null : parts[1]);
    }

    /** The one signal of an output. */
    SignalText signal() {
        if (signals.size() != 1) {
            throw id.fault("an output sends one signal");
        }
        return signals.get(0);
    }

    List<Carried> accepts() {
        return signals.stream().map(SignalText::carried).toList();
    }

    /** An input has one level for all of its signals. */
    Level level() {
        return signals.stream()
                .map(SignalText::level)
                .filter(Level::isLogic)
                .findFirst()
                .orElse(Level.VIDEO_75_OHM);
    }

    boolean isDigital() {
        return signals.stream().allMatch(signal -> signal.format().isDigital());
    }

    @Nullable
    LinkKind link() {
        return isDigital() ? DIGITAL.getOrDefault(plug.connector().name(), LinkKind.HDMI) : null;
    }
}
