package rasterfit.rule;

import static rasterfit.rule.Severity.NOTE;
import static rasterfit.rule.Severity.REFUSAL;
import static rasterfit.rule.Severity.WARNING;

import java.util.List;
import rasterfit.gear.DisplayTest;
import rasterfit.quantity.Rational;

/** What owners found out about their own gear, and what follows from a collection. */
public final class OwnerRules {
    private static final Rule BLANK = new Rule(
            "display.own-test-blank",
            Stage.DISPLAY_INPUT,
            REFUSAL,
            "A raster that stayed blank when its owner tried it on this input is not proposed again.",
            "the owner's own test");
    private static final Rule SHOWN = new Rule(
            "display.own-test-shown",
            Stage.DISPLAY_INPUT,
            NOTE,
            "That the owner saw the raster on this input counts more than what the display lists.",
            "the owner's own test");
    private static final Rule DROPS_OUT = new Rule(
            "display.own-test-drops-out",
            Stage.DISPLAY_INPUT,
            WARNING,
            "A raster that the display showed with interruptions when its owner tried it counts as outside of its limits.",
            "the owner's own test");
    private static final Rule OUTDATED = new Rule(
            "display.own-test-outdated",
            Stage.DISPLAY_INPUT,
            WARNING,
            "A test made with another firmware than the display has now decides nothing; it is worth trying again.",
            "common practice");
    private static final Rule LAG_MEASURED = new Rule(
            "display.lag-measured-by-owner",
            Stage.DISPLAY_INPUT,
            NOTE,
            "The owner's own reading of the delay stands in place of what is published, declared or assumed.",
            "the owner's own reading");
    private static final Rule LAG_BOUNDED = new Rule(
            "display.lag-bounded-by-owner",
            Stage.DISPLAY_INPUT,
            NOTE,
            "The owner's own reading from press to light holds the console's delay too: it bounds the display's from"
                    + " above and leaves it as published, declared or assumed below that.",
            "the owner's own reading");
    private static final Rule WHICH_DISPLAY = new Rule(
            "collection.which-display",
            Stage.SETUP,
            NOTE,
            "What an owner found out holds for one display, not for its model: of several owned ones of a model, one has"
                    + " to be named by its item.",
            "definition");
    private static final Rule UNPLACED = new Rule(
            "collection.evidence-without-input",
            Stage.SETUP,
            WARNING,
            "A reading or test for an input or menu state that the display does not have cannot be used.",
            "definition");
    private static final Rule MISSING = new Rule(
            "collection.item-without-gear",
            Stage.SETUP,
            WARNING,
            "An item whose catalogued thing is gone has no facts to compute with.",
            "definition");

    static final List<Rule> ALL =
            List.of(BLANK, SHOWN, DROPS_OUT, OUTDATED, LAG_MEASURED, LAG_BOUNDED, WHICH_DISPLAY, UNPLACED, MISSING);

    private OwnerRules() {}

    /** An own test in words: its day and firmware. */
    private static String told(DisplayTest test) {
        return "on " + test.on() + (test.firmware() == null ? "" : " with firmware " + test.firmware());
    }

    /** @param input path of the input */
    public static Refusal blank(DisplayTest test, String input) {
        return new Refusal(
                BLANK,
                null,
                null,
                null,
                "Blank at input " + input + " when its owner tried it " + told(test)
                        + "; another output timing, input or menu state would help.");
    }

    public static Finding shown(DisplayTest test, String modes, String input) {
        return new Finding(SHOWN, modes + ": its owner saw this raster at input " + input + " " + told(test) + ".");
    }

    /** @param instead what else there is, a sentence */
    public static Finding dropsOut(DisplayTest test, String modes, String input, String instead) {
        return new Finding(
                DROPS_OUT,
                modes + ": its owner saw this raster with interruptions at input " + input + " " + told(test) + "; "
                        + instead);
    }

    public static Finding outdated(DisplayTest test, String modes, String input) {
        return new Finding(
                OUTDATED,
                modes + ": " + test.outcome() + " at input " + input + " " + told(test)
                        + ", which is not the present one.");
    }

    /**
     * A delay as it is told.
     *
     * @param basis in words: measured, declared, assumed, ...
     */
    public record Delay(Rational least, Rational typical, Rational greatest, String basis) {
        String told() {
            return number(typical) + " [" + number(least) + "–" + number(greatest) + "] ms " + basis;
        }

        private static String number(Rational ms) {
            return ms.toSixDigits().toPlainString();
        }
    }

    /** @param reading day and repetitions of the reading, in words */
    public static Finding lagMeasured(String modes, String reading, Delay own, Delay replaced) {
        return new Finding(
                LAG_MEASURED,
                modes + ": " + own.told() + " by the own reading " + reading + ", in place of " + replaced.told()
                        + ".");
    }

    /** @param reading day and repetitions of the reading, in words */
    public static Finding lagBounded(String modes, String reading, Delay bounded, Delay without) {
        return new Finding(
                LAG_BOUNDED,
                modes + ": " + bounded.told() + " within the own reading from press to light " + reading
                        + "; without it " + without.told() + ".");
    }

    public static Finding whichDisplay(String name, List<String> items) {
        return new Finding(
                WHICH_DISPLAY,
                "The collection holds several of " + name + " (" + String.join(", ", items)
                        + "); no readings and tests were used. Name one by itemId.");
    }

    /** @param what begins a sentence and names the input */
    public static Finding unplaced(String what) {
        return new Finding(UNPLACED, what + ", which the display does not have; it was not used.");
    }

    public static Finding missing(String item) {
        return new Finding(MISSING, "What item " + item + " was catalogued as is gone; the item was left out.");
    }
}
