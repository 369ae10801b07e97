package rasterfit.match.route;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Link;
import rasterfit.rule.Refusal;
import rasterfit.rule.Signal;

/**
 * The links between two devices.
 *
 * @param links in signal order; none where a plain lead joins the two
 * @param arriving the signal as it reaches the second device
 * @param refusal why it does not get there; absent if it does
 */
public record Run(
        List<Link> links, Signal arriving, @Nullable Refusal refusal) {
    public Run {
        links = List.copyOf(links);
    }

    /** A plain lead. */
    static Run plain(Signal signal) {
        return new Run(List.of(), signal, null);
    }

    public boolean isPlain() {
        return links.isEmpty();
    }

    /** With one more link behind the last. */
    Run with(Link link, Signal after, @Nullable Refusal why) {
        List<Link> more = new ArrayList<>(links);
        more.add(link);
        return new Run(more, after, why);
    }
}
