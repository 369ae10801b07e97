package rasterfit.sensitivity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Catalogue;
import rasterfit.match.Criterion;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult;
import rasterfit.match.MatchResult.RouteStep;
import rasterfit.match.Reruns;

/**
 * Finds where the first place changes. Of the setups that are known the nearest crossing is worked out; a run at that
 * weight tells whether an unknown one is better there, which then crosses nearer, and so on. Since a score is a fraction
 * of linear functions, a setup that is best at both ends of a stretch is best all along it, as long as the same criteria
 * apply: no search by trial is needed.
 */
final class WeightSearch {
    /** A better setup is one that is better by more than rounding could make it. */
    private static final double ROUNDING = 1e-10;

    /** Weights nearer than this, relatively, are one. */
    private static final double SAME_WEIGHT = 1e-9;

    /** How far beyond a crossing setups are compared, relatively. */
    private static final double BEYOND = 1e-3;

    private static final int MOST_STEPS = 20;

    /** Changes of settings that are followed on the way to another route. */
    private static final int MOST_CHANGES = 12;

    private final MatchRequest request;
    private final Catalogue catalogue;
    private final Reruns reruns;
    private final Map<Criterion, Double> weights;
    private final Map<Line.Setting, Line> known = new LinkedHashMap<>();
    private final Line first;

    /** @param result of the request; with a first place */
    WeightSearch(MatchRequest request, Catalogue catalogue, MatchResult result, Reruns reruns) {
        this.request = request;
        this.catalogue = catalogue;
        this.reruns = reruns;
        this.weights = request.allWeights();
        this.first = Line.of(result.ranked().get(0));
        learn(result);
    }

    private void learn(MatchResult result) {
        result.ranked().forEach(setup -> {
            Line line = Line.of(setup);
            known.putIfAbsent(line.setting(), line);
        });
    }

    /** Of every criterion that applies to any setup; none for one that alone counts. */
    List<WeightRoom> rooms() {
        List<WeightRoom> rooms = new ArrayList<>();
        for (Criterion criterion : Criterion.values()) {
            boolean applies = known.values().stream().anyMatch(line -> line.applies(criterion));
            if (applies && first.weightBeside(criterion, weights) > 0) {
                rooms.add(room(criterion));
            }
        }
        return rooms;
    }

    private WeightRoom room(Criterion criterion) {
        double weight = weights.getOrDefault(criterion, 0.0);
        double all = weight + first.weightBeside(criterion, weights);
        List<WeightRoom.Bound> below = weight == 0 ? List.of() : changes(criterion, weight, 0);
        List<WeightRoom.Bound> above = changes(criterion, weight, Sensitivity.MOST_WEIGHT);
        return new WeightRoom(
                criterion,
                weight,
                first.applies(criterion) ? weight / all : null,
                below.isEmpty() ? null : below.get(0),
                otherRoute(below),
                above.isEmpty() ? null : above.get(0),
                otherRoute(above));
    }

    private static WeightRoom.@Nullable Bound otherRoute(List<WeightRoom.Bound> changes) {
        WeightRoom.Bound last = changes.isEmpty() ? null : changes.get(changes.size() - 1);
        return last == null || last.sameRoute() ? null : last;
    }

    /**
     * The changes of first place on the way to a weight, up to the one that brings another route.
     *
     * @param to up to which they are looked for, below or above the weight
     */
    private List<WeightRoom.Bound> changes(Criterion criterion, double weight, double to) {
        List<WeightRoom.Bound> changes = new ArrayList<>();
        Line present = first;
        double from = weight;
        for (int change = 0; change < MOST_CHANGES; change++) {
            Found found = nearest(present, criterion, from, to);
            if (found == null) {
                return changes;
            }
            present = found.crossing().line();
            from = found.crossing().weight();
            changes.add(bound(found, weight));
            if (!present.setting().route().equals(first.setting().route())) {
                return changes;
            }
        }
        return changes;
    }

    /** A weight at which a setup becomes as good as the one that is best up to there. */
    private record Crossing(double weight, Line line) {}

    /** @param verified whether a run at that weight found nothing better than the one that was best */
    private record Found(Crossing crossing, double score, boolean verified) {}

    private @Nullable Found nearest(Line present, Criterion criterion, double from, double to) {
        Crossing crossing = null;
        boolean verified = false;
        for (int step = 0; step < MOST_STEPS && !verified; step++) {
            crossing = nearestKnown(present, criterion, from, to);
            Map<Criterion, Double> moved = Weights.with(weights, criterion, crossing == null ? to : crossing.weight());
            Optional<MatchResult> result =
                    reruns.run(request.withJudgement(request.intent(), moved, request.limits()), catalogue);
            if (result.isEmpty() || result.get().ranked().isEmpty()) {
                break;
            }
            learn(result.get());
            if (result.get().ranked().get(0).score() <= present.score(moved) + ROUNDING) {
                crossing = nearestKnown(present, criterion, from, to);
                verified = true;
            }
        }
        return crossing == null
                ? null
                : new Found(crossing, present.score(Weights.with(weights, criterion, crossing.weight())), verified);
    }

    private WeightRoom.Bound bound(Found found, double weight) {
        List<RouteStep> route = found.crossing().line().setting().route();
        boolean alike = known.values().stream().allMatch(other -> other.hasCriteriaOf(first));
        double at = found.crossing().weight();
        return new WeightRoom.Bound(
                at,
                weight == 0 ? null : at / weight,
                found.score(),
                route,
                route.equals(first.setting().route()),
                found.verified(),
                found.verified() && alike);
    }

    /** Of several that cross at one weight, the one that is best beyond. */
    private @Nullable Crossing nearestKnown(Line present, Criterion criterion, double from, double to) {
        Crossing nearest = null;
        for (Line line : known.values()) {
            OptionalDouble at = new Rivalry(present, line, criterion, weights).overtakenBetween(from, to);
            if (at.isEmpty()) {
                continue;
            }
            Crossing crossing = new Crossing(at.getAsDouble(), line);
            if (nearest == null || isBefore(crossing, nearest, criterion, from, to)) {
                nearest = crossing;
            }
        }
        return nearest;
    }

    private boolean isBefore(Crossing one, Crossing other, Criterion criterion, double from, double to) {
        double apart = Math.abs(one.weight() - from) - Math.abs(other.weight() - from);
        double same = SAME_WEIGHT * Math.max(one.weight(), other.weight());
        if (Math.abs(apart) > same) {
            return apart < 0;
        }
        double beyond = other.weight() + Math.copySign(BEYOND * Math.max(from, other.weight()), to - from);
        Map<Criterion, Double> moved = Weights.with(weights, criterion, Math.max(0, beyond));
        return one.line().score(moved) > other.line().score(moved);
    }
}
