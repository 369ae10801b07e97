package rasterfit.remedy;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Connector;
import rasterfit.gear.Converter;
import rasterfit.gear.ConverterInput;
import rasterfit.gear.ConverterOutput;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Link;
import rasterfit.gear.Plug;
import rasterfit.gear.SourceOutput;
import rasterfit.match.MatchRequest;

/** The connectors to which one more part could be joined; a part that mates with none of them cannot help alone. */
final class Sockets {
    private final List<Connector> sending = new ArrayList<>();
    private final List<Connector> taking = new ArrayList<>();
    private boolean takesAny;

    private Sockets() {}

    /** Of console, display and equipment of a request that takes nothing from the catalogue. */
    static Sockets of(MatchRequest request) {
        Sockets sockets = new Sockets();
        request.source().outputs().stream()
                .map(SourceOutput::plug)
                .forEach(plug -> sockets.sending.add(plug.connector()));
        for (DisplayInput input : request.display().inputs()) {
            sockets.addTaking(input.plug());
        }
        for (Converter converter : request.equipment().converters()) {
            converter.inputs().stream().map(ConverterInput::plug).forEach(sockets::addTaking);
            converter.outputs().stream()
                    .map(ConverterOutput::plug)
                    .forEach(plug -> sockets.sending.add(plug.connector()));
        }
        for (Link link : request.equipment().links()) {
            sockets.sending.add(link.to().connector());
            sockets.addTaking(link.from());
        }
        return sockets;
    }

    /** An input whose connector is not stated takes any. */
    private void addTaking(@Nullable Plug plug) {
        if (plug == null) {
            takesAny = true;
        } else {
            taking.add(plug.connector());
        }
    }

    boolean fits(Link link) {
        return sending.contains(link.from().connector()) && takes(link.to());
    }

    boolean fits(Converter converter) {
        return converter.inputs().stream()
                        .anyMatch(input -> sending.contains(input.plug().connector()))
                && converter.outputs().stream().anyMatch(output -> takes(output.plug()));
    }

    private boolean takes(Plug plug) {
        return takesAny || taking.contains(plug.connector());
    }
}
