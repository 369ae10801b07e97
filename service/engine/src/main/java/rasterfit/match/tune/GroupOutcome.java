package rasterfit.match.tune;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rasterfit.gear.Mode;
import rasterfit.match.AcceptanceGrade;

/**
 * What the settings of one group of modes on one route came to. Of all settings it keeps, per grade of acceptance and
 * output raster, the best few and those that no other dominates in picture and latency: enough for the best setup and
 * for the front of all setups, whatever the other groups choose.
 */
public final class GroupOutcome {
    private final List<Mode> modes;
    private final int keep;
    private final boolean rastersMatter;
    private final Map<Key, List<Candidate>> best = new LinkedHashMap<>();
    private final Map<Key, List<Candidate>> front = new LinkedHashMap<>();

    private record Key(AcceptanceGrade grade, String rasterKey) {}

    /**
     * Starts empty.
     *
     * @param keep how many of the best to keep
     * @param rastersMatter whether a change of raster between groups costs anything
     */
    GroupOutcome(List<Mode> modes, int keep, boolean rastersMatter) {
        this.modes = modes;
        this.keep = keep;
        this.rastersMatter = rastersMatter;
    }

    public List<Mode> modes() {
        return modes;
    }

    /** Whether a setting with these figures would change anything that is kept. */
    boolean matters(AcceptanceGrade grade, String rasterKey, double partial, double picture, double latency) {
        Key key = key(grade, rasterKey);
        List<Candidate> kept = best.get(key);
        if (kept == null
                || kept.size() < keep
                || partial > kept.get(kept.size() - 1).partial()) {
            return true;
        }
        return !isDominated(front.getOrDefault(key, List.of()), picture, latency);
    }

    void add(Candidate candidate) {
        Key key = key(candidate.grade(), candidate.rasterKey());
        List<Candidate> kept = best.computeIfAbsent(key, missing -> new ArrayList<>());
        int at = kept.size();
        while (at > 0 && candidate.partial() > kept.get(at - 1).partial()) {
            at--;
        }
        if (at < keep) {
            kept.add(at, candidate);
            if (kept.size() > keep) {
                kept.remove(keep);
            }
        }
        List<Candidate> edge = front.computeIfAbsent(key, missing -> new ArrayList<>());
        if (!isDominated(edge, candidate.picture(), candidate.latency())) {
            edge.removeIf(other -> other.picture() <= candidate.picture() && other.latency() <= candidate.latency());
            edge.add(candidate);
        }
    }

    /** Equal counts as dominated: one of equals is enough for a front of values. */
    private static boolean isDominated(List<Candidate> edge, double picture, double latency) {
        for (Candidate other : edge) {
            if (other.picture() >= picture && other.latency() >= latency) {
                return true;
            }
        }
        return false;
    }

    private Key key(AcceptanceGrade grade, String rasterKey) {
        return new Key(grade, rastersMatter ? rasterKey : "");
    }

    public List<Candidate> best() {
        return best.values().stream().flatMap(List::stream).toList();
    }

    public List<Candidate> front() {
        return front.values().stream().flatMap(List::stream).toList();
    }
}
