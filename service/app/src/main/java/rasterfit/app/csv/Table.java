package rasterfit.app.csv;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.QuoteMode;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The table of documents of one kind (RFC 4180).
 *
 * <p>A column is named by the path of its value, as {@code inputs/0/connector}: a JSON Pointer without the slash in front. A
 * list of plain values is one cell, its elements with spaces between; in JSON where that would not say the same. An empty
 * list is {@code []}, an empty object {@code {}}. Columns stand in the order in which documents have their members; where a
 * document has another order, its row says so in the column {@link #ORDER}.
 */
public final class Table {
    /** Names the columns of its row in the order of the document; only needed where that differs from the table's. */
    static final String ORDER = "#order";

    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            // Whatever a reader takes for a separator, what stands in quotes stays one cell; absent ones have none.
            .setQuoteMode(QuoteMode.ALL_NON_NULL)
            .setIgnoreEmptyLines(false)
            .get();

    private final Shape shape;
    private final ObjectMapper mapper;
    private final Cell cell;

    /** @param document the record that documents of this kind are read into */
    public Table(Class<? extends Record> document, ObjectMapper mapper) {
        this.shape = Shape.of(document);
        this.mapper = mapper;
        this.cell = new Cell(mapper);
    }

    /** The whole table as text; each document is a JSON object as it is written. */
    public String write(List<String> documents) {
        Header header = new Header();
        documents.forEach(document -> header.add(cells(tree(document)).keySet()));
        List<Map<String, String>> rows = new ArrayList<>();
        boolean hasOrder = false;
        for (String document : documents) {
            Map<String, String> row = row(document, header);
            hasOrder |= row.containsKey(ORDER);
            rows.add(row);
        }
        List<String> columns = new ArrayList<>(header.columns);
        if (hasOrder) {
            columns.add(ORDER);
        }
        return printed(columns, rows);
    }

    private static String printed(List<String> columns, List<Map<String, String>> rows) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, FORMAT)) {
            printer.printRecord(columns);
            for (Map<String, String> row : rows) {
                printer.printRecord(columns.stream().map(row::get));
            }
        } catch (IOException impossible) {
            throw new IllegalStateException("text in memory can be written", impossible);
        }
        return text.toString();
    }

    /**
     * Reads a table row by row, each of its documents with the faults of its cells.
     *
     * @throws rasterfit.app.problem.ProblemException if the text is no table, or its header names what is not known
     */
    public void read(Reader text, Consumer<TableRow> rows) throws IOException {
        new TableReader(shape, cell, mapper).read(text, rows);
    }

    /** The name of the column of a value, of which a path leads to a part: the list in whose cell an element stands. */
    public String column(String path) {
        Shape at = shape;
        String column = "";
        for (String step : path.split("/", -1)) {
            boolean isOneCell = at instanceof Shape.Elements list && list.element() instanceof Shape.Scalar;
            Optional<Shape> next = isOneCell
                    ? Optional.empty()
                    : at.step(step.replace("~1", "/").replace("~0", "~"));
            if (next.isEmpty() && !(at instanceof Shape.Members)) {
                return column;
            }
            column = column.isEmpty() ? step : column + "/" + step;
            at = next.orElse(at);
        }
        return column;
    }

    /** Columns in an order that agrees with as many documents as it comes to see first. */
    private static final class Header {
        private final List<String> columns = new ArrayList<>();
        private final Map<String, Integer> places = new HashMap<>();

        void add(Iterable<String> paths) {
            int before = -1;
            for (String path : paths) {
                Integer known = places.get(path);
                before = known == null ? before + 1 : known;
                if (known == null) {
                    columns.add(before, path);
                    for (int i = before; i < columns.size(); i++) {
                        places.put(columns.get(i), i);
                    }
                }
            }
        }

        Map<String, String> inOrder(Map<String, String> cells) {
            Map<String, String> ordered = new LinkedHashMap<>();
            cells.keySet().stream()
                    .sorted((one, other) -> Integer.compare(place(one), place(other)))
                    .forEach(path -> ordered.put(path, String.valueOf(cells.get(path))));
            return ordered;
        }

        private int place(String path) {
            return places.getOrDefault(path, columns.size());
        }
    }

    /** The cells of a document, with its order where the columns would give another one. */
    private Map<String, String> row(String document, Header header) {
        Map<String, String> cells = cells(tree(document));
        if (readBack(header.inOrder(cells)).equals(document)) {
            return cells;
        }
        if (!readBack(cells).equals(document)) {
            throw new IllegalStateException("a stored document is not what its own cells say: " + document);
        }
        cells.put(ORDER, String.join(" ", cells.keySet()));
        return cells;
    }

    private String readBack(Map<String, String> cells) {
        Branch root = Branch.root();
        try {
            for (Map.Entry<String, String> one : cells.entrySet()) {
                Column column = Column.of(one.getKey(), shape);
                root.put(column, cell.read(one.getValue(), column.shape()));
            }
        } catch (Column.UnknownColumn | Cell.Unreadable broken) {
            throw new IllegalStateException("a stored document does not fit its own columns", broken);
        }
        return mapper.writeValueAsString(root.object());
    }

    private Map<String, String> cells(ObjectNode document) {
        Map<String, String> cells = new LinkedHashMap<>();
        collect("", document, cells);
        return cells;
    }

    private void collect(String path, JsonNode value, Map<String, String> cells) {
        if (Cell.takesOne(value)) {
            cells.put(path, cell.of(value));
        } else if (value.isObject()) {
            value.properties().forEach(one -> collect(Column.path(path, one.getKey()), one.getValue(), cells));
        } else {
            for (int i = 0; i < value.size(); i++) {
                collect(Column.path(path, Integer.toString(i)), value.get(i), cells);
            }
        }
    }

    private ObjectNode tree(String document) {
        return (ObjectNode) mapper.readTree(document);
    }
}
