package rasterfit.edid;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What the blocks after the base block say.
 *
 * @param cta the CTA-861 extensions in order
 * @param displayId the DisplayID sections in order
 * @param dataBlocks the data blocks of CTA-861 in order: of its own extensions, and inside DisplayID
 * @param displayIdTimings those of DisplayID sections and of data blocks of CTA-861, in order
 * @param detailed the detailed timings of all extensions in order
 * @param standard those of video timing blocks, numbered after those of the base block
 * @param cvtCodes likewise
 */
record Extensions(
        List<CtaExtension> cta,
        List<DisplayIdSection> displayId,
        List<CtaDataBlocks> dataBlocks,
        List<DisplayIdTiming> displayIdTimings,
        List<DetailedTiming> detailed,
        List<AcceptedTiming> standard,
        List<AcceptedTiming> cvtCodes) {

    private static final int COUNT_OFFSET = 0x7E;

    /** Block map: says where the other tags are, which each block says itself. */
    private static final int TAG_BLOCK_MAP = 0xF0;

    /**
     * Blocks past the count of the base block are read if their checksum is right: displays with a wrong count exist, and so
     * do readers that fill the end with anything (common practice).
     */
    static Extensions read(byte[] edid, int blocks, BaseBlock base, DefectLog log) {
        int declared = declared(edid, blocks);
        if (declared != blocks - 1) {
            log.add(
                    DefectCode.EXTENSION_COUNT_DIFFERS,
                    0,
                    COUNT_OFFSET,
                    declared + " extensions declared, " + (blocks - 1) + " present");
        }
        Reader reader = new Reader(base, log);
        for (int index = 1; index < blocks; index++) {
            Block block = new Block(edid, index);
            boolean isCounted = index <= declared;
            boolean isPadding = !isCounted && block.isUniform(0, Block.BYTES);
            if (!isPadding && (block.checkSum(log) || isCounted)) {
                reader.read(block);
            }
        }
        return reader.extensions();
    }

    /** Byte 7Eh, unless the first extension overrides it (HDMI 2.1, from memory). */
    private static int declared(byte[] edid, int blocks) {
        int byBase = new Block(edid, 0).at(COUNT_OFFSET);
        if (blocks < 2) {
            return byBase;
        }
        Block first = new Block(edid, 1);
        boolean isCta = first.at(0) == CtaExtension.TAG;
        Integer byExtension =
                isCta ? CtaExtension.read(first, new DefectLog()).dataBlocks().extensionCount() : null;
        return byExtension == null ? byBase : byExtension;
    }

    /** The first that any data block of CTA-861 states. */
    <T> @Nullable T first(Function<CtaDataBlocks, @Nullable T> member) {
        return dataBlocks.stream()
                .map(member)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    @Nullable
    CtaFlags flags() {
        return cta.stream()
                .map(CtaExtension::flags)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    private static final class Reader {
        private final BaseBlock base;
        private final DefectLog log;
        private final List<CtaExtension> cta = new ArrayList<>();
        private final List<DisplayIdSection> displayId = new ArrayList<>();
        private final List<CtaDataBlocks> dataBlocks = new ArrayList<>();
        private final List<DisplayIdTiming> displayIdTimings = new ArrayList<>();
        private final List<DetailedTiming> detailed = new ArrayList<>();
        private final List<AcceptedTiming> standard = new ArrayList<>();
        private final List<AcceptedTiming> cvtCodes = new ArrayList<>();

        Reader(BaseBlock base, DefectLog log) {
            this.base = base;
            this.log = log;
        }

        void read(Block block) {
            switch (block.at(0)) {
                case CtaExtension.TAG -> {
                    CtaExtension extension = CtaExtension.read(block, log);
                    cta.add(extension);
                    detailed.addAll(extension.detailed());
                    add(extension.dataBlocks());
                }
                case DisplayIdSection.EXTENSION_TAG -> {
                    DisplayIdSection section = DisplayIdSection.read(block, log);
                    displayId.add(section);
                    displayIdTimings.addAll(section.timings());
                    section.ctaDataBlocks().forEach(this::add);
                }
                case VideoTimingBlock.TAG -> {
                    VideoTimingBlock timings = VideoTimingBlock.read(block, base, last(cvtCodes), last(standard), log);
                    detailed.addAll(timings.detailed());
                    cvtCodes.addAll(timings.cvtCodes());
                    standard.addAll(timings.standard());
                }
                case TAG_BLOCK_MAP -> {
                    // Every block says itself what it is.
                }
                default ->
                    log.add(
                            DefectCode.EXTENSION_NOT_READ,
                            block,
                            0,
                            String.format("extension %02Xh is not read", block.at(0)));
            }
        }

        private void add(CtaDataBlocks blocks) {
            dataBlocks.add(blocks);
            displayIdTimings.addAll(blocks.displayIdTimings());
        }

        private static int last(List<AcceptedTiming> timings) {
            return timings.isEmpty() ? 0 : timings.get(timings.size() - 1).number();
        }

        Extensions extensions() {
            return new Extensions(
                    List.copyOf(cta),
                    List.copyOf(displayId),
                    List.copyOf(dataBlocks),
                    List.copyOf(displayIdTimings),
                    List.copyOf(detailed),
                    List.copyOf(standard),
                    List.copyOf(cvtCodes));
        }
    }
}
