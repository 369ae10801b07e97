package rasterfit.scenario;

import rasterfit.gear.Conversion;

/** {@code RGB+SYNC_ON_COMPOSITE=>YPBPR+SYNC_ON_LUMA}; an adapter takes the level that is named, video level where none is. */
record ConversionText(SignalText from, SignalText to) {
    private static final String BECOMES = "=>";

    static boolean isOne(String text) {
        return text.contains(BECOMES);
    }

    static ConversionText read(Word word) {
        String[] sides = word.text().split(BECOMES, -1);
        if (sides.length != 2) {
            throw word.fault("a conversion is written as SIGNAL=>SIGNAL");
        }
        return new ConversionText(SignalText.read(word, sides[0]), SignalText.read(word, sides[1]));
    }

    Conversion conversion() {
        return new Conversion(from.format(), from.sync(), from.level(), to.format(), to.sync(), to.level());
    }
}
