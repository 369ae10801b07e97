package rasterfit.upkeep;

/**
 * What can hurt someone while gear is looked after, and the usual precaution (common practice). Local rules and qualified
 * people go before anything said here.
 */
public enum Caution {
    MAINS(
            "Unplug it from the mains first and never work on it live. Leave mains wiring to a qualified person and follow"
                    + " local rules."),
    CHARGED_CAPACITORS(
            "Capacitors of a supply or a display hold a dangerous charge long after it is unplugged. Only people"
                    + " trained in discharging and measuring them should open it."),
    TUBE(
            "A picture tube keeps a charge of tens of kilovolts and can implode. Opening or adjusting a tube display is for"
                    + " qualified people only."),
    SOLDERING("A soldering iron burns and its fumes harm: work in moving air, with eye protection, and wash hands after"
            + " leaded solder."),
    SOLVENTS(
            "Solvents and contact cleaners burn and their vapour harms: no flame, fresh air, gloves, and only on a device"
                    + " that is off and unplugged. Follow the label."),
    LASER(
            "The laser of a disc drive is strong, and some of its light cannot be seen: never run a drive that is open, look into"
                    + " its lens or hold down its door switch."),
    BATTERIES(
            "Batteries can leak or catch fire: do not short, heat, recharge or solder to a cell that is not made for it,"
                    + " do not touch what leaked, and hand used cells in as local rules say."),
    UNKNOWN_WORK(
            "What this work can do to you is not known here. Unplug a device before you open it, and leave to a qualified person"
                    + " whatever mains, a tube, charged capacitors, heat, chemicals or batteries make dangerous. Follow local"
                    + " rules.");

    private final String text;

    Caution(String text) {
        this.text = text;
    }

    /** For a person, in full sentences. */
    public String text() {
        return text;
    }
}
