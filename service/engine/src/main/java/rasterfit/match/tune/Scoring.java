package rasterfit.match.tune;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rasterfit.match.Criterion;

/**
 * Normalised weights of the criteria that apply to a route, and those of the picture axis (dominance): uniformity,
 * aspect, coverage, motion and detail among themselves.
 */
public final class Scoring {
    private static final List<Criterion> PICTURE = List.of(
            Criterion.DOT_UNIFORMITY, Criterion.ASPECT, Criterion.COVERAGE, Criterion.MOTION, Criterion.LINK_DETAIL);

    private final Map<Criterion, Double> weights;
    private final Map<Criterion, Double> picture;

    private Scoring(Map<Criterion, Double> weights, Map<Criterion, Double> picture) {
        this.weights = weights;
        this.picture = picture;
    }

    /** A criterion that does not apply drops out; where all weights that apply are zero they count evenly. */
    public static Scoring of(Map<Criterion, Double> asked, Set<Criterion> applying) {
        Set<Criterion> pictureApplying = new java.util.TreeSet<>(applying);
        pictureApplying.retainAll(PICTURE);
        return new Scoring(normalised(asked, applying), normalised(asked, pictureApplying));
    }

    private static Map<Criterion, Double> normalised(Map<Criterion, Double> asked, Set<Criterion> applying) {
        double sum = 0;
        for (Criterion criterion : applying) {
            sum += asked.getOrDefault(criterion, 0.0);
        }
        Map<Criterion, Double> normalised = new EnumMap<>(Criterion.class);
        for (Criterion criterion : applying) {
            normalised.put(criterion, sum > 0 ? asked.getOrDefault(criterion, 0.0) / sum : 1.0 / applying.size());
        }
        return normalised;
    }

    public double weight(Criterion criterion) {
        return weights.getOrDefault(criterion, 0.0);
    }

    public boolean applies(Criterion criterion) {
        return weights.containsKey(criterion);
    }

    double picture(Criterion criterion) {
        return picture.getOrDefault(criterion, 0.0);
    }
}
