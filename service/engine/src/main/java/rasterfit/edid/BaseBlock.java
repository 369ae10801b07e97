package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rasterfit.edid.ScreenSize.SizeMm;
import rasterfit.quantity.Rational;

/**
 * What the base block says (E-EDID §3), before the extensions are put beside it.
 *
 * @param firstIsNative the first descriptor has the native format of the display (EDID 1.4)
 * @param standard by slot, those of the descriptors last
 * @param established by bit, those of the descriptors last
 */
record BaseBlock(
        ProductIdentity product,
        @Nullable AnalogInput analog,
        @Nullable DigitalInput digital,
        boolean continuousFrequency,
        boolean defaultGtf,
        boolean firstIsNative,
        ScreenSize screen,
        Descriptors descriptors,
        List<AcceptedTiming> standard,
        List<AcceptedTiming> established) {

    private static final int STANDARD_OFFSET = 0x26;
    static final int STANDARD_SLOTS = 8;

    /** Table 3.11, byte 14h bits 6–5. */
    private static final List<AnalogLevel> ANALOG_LEVELS = List.of(
            AnalogLevel.VIDEO_700_SYNC_300,
            AnalogLevel.VIDEO_714_SYNC_286,
            AnalogLevel.VIDEO_1000_SYNC_400,
            AnalogLevel.VIDEO_700_SYNC_0);

    /** Table 3.11, byte 14h bits 3–0, from 1 on. */
    private static final List<DigitalInput.Standard> INTERFACES = List.of(
            DigitalInput.Standard.DVI,
            DigitalInput.Standard.HDMI_A,
            DigitalInput.Standard.HDMI_B,
            DigitalInput.Standard.MDDI,
            DigitalInput.Standard.DISPLAY_PORT);

    static BaseBlock read(Block block, DefectLog log) {
        EdidVersion version = version(block, log);
        Descriptors descriptors = Descriptors.read(block, version, log);
        NominalRasters rasters = new NominalRasters(descriptors.rangeLimits());
        List<AcceptedTiming> standard =
                new ArrayList<>(StandardTimings.read(block, STANDARD_OFFSET, STANDARD_SLOTS, 1, version, rasters, log));
        standard.addAll(descriptors.standard());
        List<AcceptedTiming> established = new ArrayList<>(EstablishedTimings.readFirstAndSecond(block));
        established.addAll(descriptors.established());
        boolean isDigital = block.bit(0x14, 7);
        boolean continuousOrGtf = block.bit(0x18, 0);
        return new BaseBlock(
                product(block, version, descriptors.name(), log),
                isDigital ? null : analog(block),
                isDigital ? digital(block, version) : null,
                version.isAtLeast(4) && continuousOrGtf,
                !version.isAtLeast(4) && continuousOrGtf,
                version.isAtLeast(4) && block.bit(0x18, 1),
                screen(block, version, descriptors.detailed(), log),
                descriptors,
                List.copyOf(standard),
                List.copyOf(established));
    }

    private static EdidVersion version(Block block, DefectLog log) {
        EdidVersion version = new EdidVersion(block.at(0x12), block.at(0x13));
        if (version.version() != 1 || version.revision() > 4) {
            log.add(
                    DefectCode.VERSION_UNKNOWN,
                    block,
                    0x12,
                    version + " is none of EDID 1.0 to 1.4; read as the nearest");
        }
        return version;
    }

    private static ProductIdentity product(Block block, EdidVersion version, @Nullable String name, DefectLog log) {
        int letters = block.at(0x08) << 8 | block.at(0x09);
        StringBuilder manufacturer = new StringBuilder(3);
        for (int shift = 10; shift >= 0; shift -= 5) {
            int letter = letters >> shift & 31;
            manufacturer.append(letter >= 1 && letter <= 26 ? (char) ('A' + letter - 1) : '?');
        }
        if (letters >> 15 != 0 || manufacturer.indexOf("?") >= 0) {
            log.add(
                    DefectCode.MANUFACTURER_ID_INVALID,
                    block,
                    0x08,
                    String.format("%04Xh does not stand for three letters", letters));
        }
        int week = block.at(0x10);
        int year = block.at(0x11);
        boolean isModelYear = version.isAtLeast(4) && week == 0xFF;
        return new ProductIdentity(
                manufacturer.toString(),
                block.at(0x0A) | block.at(0x0B) << 8,
                version,
                week >= 1 && week <= 54 ? week : null,
                year == 0 ? null : 1990 + year,
                isModelYear,
                name);
    }

    /** Table 3.11, analog. */
    private static AnalogInput analog(Block block) {
        List<AnalogSync> syncs = new ArrayList<>();
        if (block.bit(0x14, 3)) {
            syncs.add(AnalogSync.SEPARATE_SYNC);
        }
        if (block.bit(0x14, 2)) {
            syncs.add(AnalogSync.COMPOSITE_SYNC);
        }
        if (block.bit(0x14, 1)) {
            syncs.add(AnalogSync.SYNC_ON_GREEN);
        }
        AnalogLevel level = ANALOG_LEVELS.get(block.at(0x14) >> 5 & 3);
        return new AnalogInput(level, block.bit(0x14, 4), syncs, block.bit(0x14, 0));
    }

    /** Table 3.11, digital; the fields were reserved before EDID 1.4. */
    private static DigitalInput digital(Block block, EdidVersion version) {
        if (!version.isAtLeast(4)) {
            return new DigitalInput(null, null);
        }
        int depth = block.at(0x14) >> 4 & 7;
        int standard = block.at(0x14) & 15;
        return new DigitalInput(
                depth >= 1 && depth <= 6 ? 4 + 2 * depth : null,
                standard >= 1 && standard <= INTERFACES.size() ? INTERFACES.get(standard - 1) : null);
    }

    /**
     * Table 3.12. The centimetres are rounded, so the millimetres of the first detailed timing may differ by one of them;
     * where they differ by more they often hold a shape such as 16 by 9 mm (common practice).
     */
    private static ScreenSize screen(Block block, EdidVersion version, List<DetailedTiming> detailed, DefectLog log) {
        int widthCm = block.at(0x15);
        int heightCm = block.at(0x16);
        SizeMm fine = detailed.isEmpty() ? null : detailed.get(0).sizeMm();
        if (widthCm > 0 && heightCm > 0) {
            SizeMm coarse = new SizeMm(10 * widthCm, 10 * heightCm);
            if (fine == null) {
                return new ScreenSize(coarse, null);
            }
            boolean agree =
                    Math.abs(fine.width() - coarse.width()) <= 10 && Math.abs(fine.height() - coarse.height()) <= 10;
            if (!agree) {
                log.add(
                        DefectCode.IMAGE_SIZE_CONTRADICTORY,
                        block,
                        0x15,
                        fine.width() + " by " + fine.height() + " mm in the first detailed timing, but " + widthCm
                                + " by " + heightCm + " cm for the screen; the latter is used");
            }
            return new ScreenSize(agree ? fine : coarse, null);
        }
        Rational aspect = null;
        if (version.isAtLeast(4) && widthCm > 0) {
            aspect = Rational.of(widthCm + 99, 100);
        } else if (version.isAtLeast(4) && heightCm > 0) {
            aspect = Rational.of(100, heightCm + 99);
        }
        return new ScreenSize(fine, aspect);
    }
}
