package rasterfit.app.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rasterfit.app.gear.ConverterBody;
import rasterfit.app.gear.DisplayBody;
import rasterfit.app.gear.LinkBody;
import rasterfit.app.gear.SourceBody;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import tools.jackson.core.StreamWriteFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.json.JsonMapper;

/** Documents go into a table and come back as they were, character by character. */
class TableTest {
    /** Numbers as the service reads and writes them. */
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    /**
     * RFC 4180 §2: file = [header CRLF] record *(CRLF record) [CRLF]; field = (escaped / non-escaped); TEXTDATA is what is no
     * comma, quote or line end. Texts may be any Unicode here (§3 with RFC 7111).
     */
    private static final Pattern RFC_4180 =
            Pattern.compile("(F(,F)*+\r\n)*+(F(,F)*+)?+".replace("F", "(?:\"(?:[^\"]|\"\")*+\"|[^\",\r\n]*+)"));

    static Stream<Class<? extends Record>> kinds() {
        return Stream.of(SourceBody.class, DisplayBody.class, ConverterBody.class, LinkBody.class);
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void whatIsWrittenIsReadBackCharacterByCharacter(Class<? extends Record> kind) throws IOException {
        Table table = new Table(kind, MAPPER);
        RandomDocuments random = new RandomDocuments(42);
        int inOtherOrder = 0;
        for (int round = 0; round < 60; round++) {
            List<String> documents = new ArrayList<>();
            for (int i = 0; i < 1 + round % 7; i++) {
                documents.add(MAPPER.writeValueAsString(random.of(kind)));
            }
            String text = table.write(documents);
            inOtherOrder += text.contains(Table.ORDER + "\"\r\n") ? 1 : 0;
            assertThat(read(table, text)).containsExactlyElementsOf(documents);
        }
        assertThat(inOtherOrder).isPositive();
    }

    @ParameterizedTest
    @MethodSource("kinds")
    void aTableHasTheFormOfRfc4180AndNoFormula(Class<? extends Record> kind) {
        RandomDocuments random = new RandomDocuments(43);
        List<String> documents = Stream.generate(() -> MAPPER.writeValueAsString(random.of(kind)))
                .limit(50)
                .toList();
        String text = new Table(kind, MAPPER).write(documents);
        assertThat(RFC_4180.matcher(text).matches()).isTrue();
        // OWASP, CSV Injection: = + - @ tab and line ends at the start of a cell; numbers may have a sign.
        assertThat(Pattern.compile("(^|[,\\n])\"(?!-?[0-9.]+\")[=+\\-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20]")
                        .matcher(text.replaceAll("\"\"", "''"))
                        .find())
                .isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "'quoted", "", "null"})
    void aTextThatASpreadsheetWouldTakeForAFormulaIsGuarded(String name) throws IOException {
        Table table = new Table(LinkBody.class, MAPPER);
        String document = MAPPER.writeValueAsString(
                MAPPER.createObjectNode().put("id", "a").put("name", name));
        String text = table.write(List.of(document));
        assertThat(text).isEqualTo("\"id\",\"name\"\r\n\"a\",\"'" + name + "\"\r\n");
        assertThat(read(table, text)).containsExactly(document);
    }

    @Test
    void listsOfPlainValuesAreOneCellAndOthersAreSpread() {
        String document =
                "{\"id\":\"a\",\"carries\":[{\"format\":\"RGB\",\"syncs\":[\"SEPARATE_SYNC\",\"COMPOSITE_SYNC\"]},"
                        + "{\"format\":\"CVBS\",\"encodings\":[]}],\"provenance\":[],\"lengthMm\":1500.0}";
        assertThat(new Table(LinkBody.class, MAPPER).write(List.of(document)))
                .isEqualTo(
                        "\"id\",\"carries/0/format\",\"carries/0/syncs\",\"carries/1/format\",\"carries/1/encodings\","
                                + "\"provenance\",\"lengthMm\"\r\n"
                                + "\"a\",\"RGB\",\"SEPARATE_SYNC COMPOSITE_SYNC\",\"CVBS\",\"[]\",\"[]\",\"1500.0\"\r\n");
    }

    @Test
    void whatAPersonTypesIsTaken() throws IOException {
        // Columns in another order, unquoted cells, line feeds, capitals of a spreadsheet, empty rows, a short row.
        String text = "to/connector,id,carries/1/format,carries/0/format,lengthMm\nVGA,a,YC,RGB,2\n\n,,,,\nSCART,b";
        assertThat(read(new Table(LinkBody.class, MAPPER), text))
                .containsExactly(
                        "{\"to\":{\"connector\":\"VGA\"},\"id\":\"a\",\"carries\":[{\"format\":\"RGB\"},{\"format\":\"YC\"}],"
                                + "\"lengthMm\":2}",
                        "{\"to\":{\"connector\":\"SCART\"},\"id\":\"b\"}");
        assertThat(read(new Table(ConverterBody.class, MAPPER), "id,outputs/0/repetition\na,TRUE\n"))
                .containsExactly("{\"id\":\"a\",\"outputs\":[{\"repetition\":true}]}");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "lengthMm|1,5|lengthMm|WRONG_TYPE",
                "lengthMm|1 500|lengthMm|WRONG_TYPE",
                "lengthMm|.5|lengthMm|WRONG_TYPE",
                "carries|RGB|carries|WRONG_TYPE",
                "price|9.50|price|WRONG_TYPE",
                "carries/0/encodings|[1]|carries/0/encodings|WRONG_TYPE",
                "carries/0/encodings|[\"a\"|carries/0/encodings|WRONG_TYPE",
                "carries/1/format|RGB|carries/1|INVALID_VALUE",
                "#order|id colour|#order|UNKNOWN_VALUE"
            })
    void aCellThatCannotBeReadIsNamed(String column, String cell, String blamed, ProblemType type) throws IOException {
        List<TableRow> rows = new ArrayList<>();
        String text = "id," + column + "\r\n\"a\nb\",\r\nc,\"" + cell.replace("\"", "\"\"") + "\"\r\n";
        new Table(LinkBody.class, MAPPER).read(new StringReader(text), rows::add);
        assertThat(rows.get(0).faults()).isEmpty();
        assertThat(rows.get(1).faults()).singleElement().satisfies(fault -> {
            assertThat(fault.column()).isEqualTo(blamed);
            assertThat(fault.type()).isEqualTo(type);
        });
        // The first row takes two lines.
        assertThat(rows.get(1).line()).isEqualTo(4);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "id,colour|UNKNOWN_MEMBER|colour",
                "id,from/plug|UNKNOWN_MEMBER|from/plug",
                "id,carries/x/format|UNKNOWN_MEMBER|carries/x/format",
                "id,name,name|DUPLICATE_MEMBER|name",
                "name|MISSING_MEMBER|id",
                "id;name|MALFORMED_CSV|commas",
                "id,|MISSING_MEMBER|Column 2"
            })
    void aHeaderThatIsNotUnderstoodIsNamed(String header, ProblemType type, String named) {
        assertThatThrownBy(() -> read(new Table(LinkBody.class, MAPPER), header + "\r\na,b,c\r\n"))
                .isInstanceOfSatisfying(ProblemException.class, problem -> {
                    assertThat(problem.type()).isEqualTo(type);
                    assertThat(problem.detail()).contains(named);
                    assertThat(problem.errors())
                            .singleElement()
                            .satisfies(error -> assertThat(error.line()).isEqualTo(1));
                });
    }

    @Test
    void brokenQuotesAreFoundOnTheirLine() {
        assertThatThrownBy(() -> read(new Table(LinkBody.class, MAPPER), "id,name\r\na,b\r\nc,\"d\"e\r\nf,g\r\n"))
                .isInstanceOfSatisfying(ProblemException.class, problem -> {
                    assertThat(problem.type()).isEqualTo(ProblemType.MALFORMED_CSV);
                    assertThat(problem.detail()).startsWith("Line 3");
                });
    }

    @Test
    void otherThanUtf8IsRefused() {
        byte[] latin = "id,name\r\na,\u00E4\r\n".getBytes(StandardCharsets.ISO_8859_1);
        var decoder = StandardCharsets.UTF_8.newDecoder();
        assertThatThrownBy(() -> new Table(LinkBody.class, MAPPER)
                        .read(new InputStreamReader(new ByteArrayInputStream(latin), decoder), row -> {}))
                .isInstanceOfSatisfying(
                        ProblemException.class,
                        problem -> assertThat(problem.detail()).contains("UTF-8"));
    }

    private static List<String> read(Table table, String text) throws IOException {
        List<String> documents = new ArrayList<>();
        table.read(new StringReader(text), row -> {
            assertThat(row.faults()).as(text).isEmpty();
            JsonNode document = row.document();
            documents.add(MAPPER.writeValueAsString(document));
        });
        return documents;
    }
}
