package rasterfit.remedy;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rasterfit.gear.Converter;
import rasterfit.gear.DisplayInput;
import rasterfit.gear.Link;
import rasterfit.gear.Variant;
import rasterfit.match.Chain;
import rasterfit.match.Limit;
import rasterfit.match.MatchRequest;
import rasterfit.match.MatchResult.RankedSetup;
import rasterfit.remedy.Change.Kind;

/** One change of a request, to be tried by a run. */
sealed interface Trial {
    /** The changed request. */
    MatchRequest request();

    /** Whether a setup of the changed request makes use of the change. */
    default boolean isUsedBy(RankedSetup setup) {
        return true;
    }

    /** How the change is told that leads from one chain to a setup with another; empty if that takes more than it. */
    Optional<Change> leads(Chain from, Chain to);

    /** How it is told where there was no chain before. */
    Change alone();

    /** A cable, adapter or switch of the catalogue. */
    record AddedLink(MatchRequest request, Link link) implements Trial {
        @Override
        public boolean isUsedBy(RankedSetup setup) {
            return setup.route().stream().anyMatch(step -> step.id().equals(link.id()));
        }

        @Override
        public Optional<Change> leads(Chain from, Chain to) {
            return from.equals(to) ? Optional.of(alone()) : Optional.empty();
        }

        @Override
        public Change alone() {
            String kind = link.kind().name().toLowerCase(Locale.ROOT);
            return Change.of(Kind.ADDED_LINK, link.id(), null, true, "Add the " + kind + " " + link.name() + ".");
        }
    }

    /** A converter of the catalogue. */
    record AddedConverter(MatchRequest request, Converter converter) implements Trial {
        @Override
        public boolean isUsedBy(RankedSetup setup) {
            return Chain.of(setup.route()).converters().stream()
                    .anyMatch(unit -> unit.id().equals(converter.id()));
        }

        @Override
        public Optional<Change> leads(Chain from, Chain to) {
            return Swap.between(from, to, true);
        }

        @Override
        public Change alone() {
            return Change.of(
                    Kind.ADDED_CONVERTER, converter.id(), null, true, "Add the converter " + converter.name() + ".");
        }
    }

    /** Another variant of the console; its outputs come with it. */
    record OtherVariant(MatchRequest request, Variant variant, String instead) implements Trial {
        @Override
        public Optional<Change> leads(Chain from, Chain to) {
            return from.converters().equals(to.converters()) && from.input().equals(to.input())
                    ? Optional.of(alone())
                    : Optional.empty();
        }

        @Override
        public Change alone() {
            return Change.of(
                    Kind.OTHER_VARIANT,
                    variant.id(),
                    instead,
                    true,
                    "Use the console's variant " + variant.id() + " in place of " + instead + ".");
        }
    }

    /** An input of the display, or a menu state of one, that the request did not choose. */
    record OtherInput(MatchRequest request, DisplayInput input) implements Trial {
        private static final Set<Kind> KINDS = Set.of(Kind.OTHER_DISPLAY_INPUT, Kind.OTHER_MENU_STATE);

        @Override
        public Optional<Change> leads(Chain from, Chain to) {
            return Swap.between(from, to, true).filter(change -> KINDS.contains(change.kind()));
        }

        @Override
        public Change alone() {
            return Change.of(
                    Kind.OTHER_DISPLAY_INPUT,
                    input.path(),
                    null,
                    true,
                    "Use the display's input " + input.path() + ".");
        }
    }

    /** @param to absent where the limit is dropped */
    record RelaxedLimit(
            MatchRequest request, Limit limit, @Nullable Limit to) implements Trial {
        @Override
        public Optional<Change> leads(Chain from, Chain to) {
            return from.equals(to) ? Optional.of(alone()) : Optional.empty();
        }

        @Override
        public Change alone() {
            String told = to == null
                    ? "Drop the limit " + limit.told() + "."
                    : "Relax the limit " + limit.told() + " to " + to.bounded() + ".";
            return new Change(
                    Kind.RELAXED_LIMIT,
                    limit.measure().id(),
                    limit.bounded(),
                    to == null ? null : to.bounded(),
                    false,
                    told);
        }
    }
}
