package rasterfit.upkeep;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Work that can hurt someone says so. */
class UpkeepWorkTest {

    /**
     * Which cautions each work has to carry at least, by what is touched (common practice): what is plugged in, what is opened,
     * soldered, wiped with a solvent or run on a cell. A drive that is opened lets its laser out (IEC 60825-1, from memory).
     */
    private static Map<UpkeepWork, Set<Caution>> needed() {
        Map<UpkeepWork, Set<Caution>> needed = new EnumMap<>(UpkeepWork.class);
        needed.put(UpkeepWork.CHECK_SAVE_BATTERY, EnumSet.of(Caution.BATTERIES));
        needed.put(UpkeepWork.REPLACE_SAVE_BATTERY, EnumSet.of(Caution.BATTERIES, Caution.SOLDERING));
        needed.put(UpkeepWork.REMOVE_STORED_BATTERIES, EnumSet.of(Caution.BATTERIES));
        needed.put(UpkeepWork.INSPECT_CAPACITORS, EnumSet.of(Caution.MAINS, Caution.CHARGED_CAPACITORS));
        needed.put(
                UpkeepWork.REPLACE_CAPACITORS,
                EnumSet.of(Caution.MAINS, Caution.CHARGED_CAPACITORS, Caution.SOLDERING));
        needed.put(UpkeepWork.CHECK_SUPPLY, EnumSet.of(Caution.MAINS));
        needed.put(UpkeepWork.CLEAN_CONTACTS, EnumSet.of(Caution.SOLVENTS));
        needed.put(UpkeepWork.CLEAN_LENS, EnumSet.of(Caution.MAINS, Caution.LASER, Caution.SOLVENTS));
        needed.put(UpkeepWork.ADJUST_TUBE, EnumSet.of(Caution.MAINS, Caution.CHARGED_CAPACITORS, Caution.TUBE));
        needed.put(UpkeepWork.OTHER, EnumSet.of(Caution.UNKNOWN_WORK));
        // Done with a menu and a camera.
        needed.put(UpkeepWork.CHECK_FIRMWARE, EnumSet.noneOf(Caution.class));
        needed.put(UpkeepWork.MEASURE_LAG, EnumSet.noneOf(Caution.class));
        return needed;
    }

    @Test
    void everyWorkThatCanHurtSomeoneCarriesItsCautions() {
        Map<UpkeepWork, Set<Caution>> needed = needed();
        assertThat(needed.keySet())
                .as("whoever adds a work decides what it needs")
                .containsExactly(UpkeepWork.values());
        needed.forEach((work, cautions) -> assertThat(work.cautions())
                .as(work.name())
                .containsAll(cautions)
                .doesNotHaveDuplicates());
        assertThat(needed.values().stream().flatMap(Set::stream)).contains(Caution.values());
    }

    /** What the precaution against each danger has to name (common practice). */
    @ParameterizedTest
    @CsvSource({
        "MAINS, [Uu]nplug",
        "MAINS, qualified",
        "CHARGED_CAPACITORS, charge",
        "CHARGED_CAPACITORS, trained",
        "TUBE, kilovolt",
        "TUBE, implode",
        "TUBE, qualified",
        "SOLDERING, fumes",
        "SOLDERING, burns",
        "SOLVENTS, flame",
        "SOLVENTS, fresh air",
        "LASER, look into",
        "BATTERIES, leak",
        "BATTERIES, fire",
        "BATTERIES, solder",
        "UNKNOWN_WORK, qualified",
    })
    void aCautionNamesTheDangerAndThePrecaution(Caution caution, String words) {
        assertThat(caution.text()).containsPattern(words);
    }

    @ParameterizedTest
    @EnumSource(UpkeepWork.class)
    void whoeverIsNotSureIsSentToLocalRulesOrQualifiedPeople(UpkeepWork work) {
        if (!work.cautions().isEmpty()) {
            String together =
                    String.join(" ", work.cautions().stream().map(Caution::text).toList());
            assertThat(together).containsPattern("local rules|qualified|[Tt]rained|label");
        }
    }
}
