package rasterfit.app.csv;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import rasterfit.app.problem.ProblemError;
import rasterfit.app.problem.ProblemException;
import rasterfit.app.problem.ProblemType;
import rasterfit.app.problem.Problems;
import tools.jackson.databind.ObjectMapper;

/** Reads a table from text whose lines may end in any of the usual ways. */
final class TableReader {
    /** The gear with the most values has some hundreds (assumption, with room). */
    private static final int MOST_COLUMNS = 10_000;

    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setIgnoreEmptyLines(false).get();

    private final Shape shape;
    private final Cell cell;
    private final ObjectMapper mapper;
    private final List<String> names = new ArrayList<>();

    /** By place; a column of a table is absent here if it is {@link Table#ORDER}. */
    private final Map<String, Column> columns = new LinkedHashMap<>();

    TableReader(Shape shape, Cell cell, ObjectMapper mapper) {
        this.shape = shape;
        this.cell = cell;
        this.mapper = mapper;
    }

    void read(Reader text, Consumer<TableRow> rows) throws IOException {
        long line = 1;
        try (CSVParser parser = FORMAT.parse(text)) {
            Iterator<CSVRecord> records = parser.iterator();
            if (!records.hasNext()) {
                throw new ProblemException(ProblemType.MISSING_BODY, "The table has no line with names of columns.");
            }
            header(records.next());
            line = parser.getCurrentLineNumber() + 1;
            while (records.hasNext()) {
                CSVRecord record = records.next();
                if (record.stream().anyMatch(one -> !one.isEmpty())) {
                    rows.accept(row(line, record));
                }
                line = parser.getCurrentLineNumber() + 1;
            }
        } catch (UncheckedIOException unreadable) {
            throw unreadable(Objects.requireNonNull(unreadable.getCause()), line);
        } catch (CSVException | CharacterCodingException unreadable) {
            throw unreadable(unreadable, line);
        }
    }

    /** @param line the first one that could not be read whole */
    private static ProblemException unreadable(IOException cause, long line) throws IOException {
        if (cause instanceof CharacterCodingException) {
            return malformed("The text is not in UTF-8.", line, cause);
        } else if (cause instanceof CSVException) {
            return malformed("The quotes of a cell do not end where the cell ends.", line, cause);
        }
        throw cause;
    }

    private static ProblemException malformed(String message, long line, IOException cause) {
        ProblemException problem = headerProblem(ProblemType.MALFORMED_CSV, null, message, line);
        problem.initCause(cause);
        return problem;
    }

    private static ProblemException headerProblem(
            ProblemType type, @Nullable String column, String message, long line) {
        String place = "Line " + line + (column == null ? "" : ", " + column);
        return new ProblemException(
                type, place + ": " + message, List.of(ProblemError.inText(null, message, null, line, null, column)));
    }

    private void header(CSVRecord header) {
        if (header.size() > MOST_COLUMNS) {
            throw Problems.outOfRange("", "A table has at most " + MOST_COLUMNS + " columns.", "1.." + MOST_COLUMNS);
        }
        for (String written : header) {
            String name = written.strip();
            names.add(name);
            if (name.equals(Table.ORDER)) {
                continue;
            }
            if (header.size() == 1 && (name.indexOf(';') >= 0 || name.indexOf('\t') >= 0)) {
                throw headerProblem(ProblemType.MALFORMED_CSV, null, "Cells are separated by commas.", 1);
            }
            if (name.isEmpty()) {
                String message = "Column " + names.size() + " has no name.";
                throw headerProblem(ProblemType.MISSING_MEMBER, name, message, 1);
            }
            try {
                if (columns.put(name, Column.of(name, shape)) != null) {
                    throw headerProblem(ProblemType.DUPLICATE_MEMBER, name, "Two columns have this name.", 1);
                }
            } catch (Column.UnknownColumn unknown) {
                throw headerProblem(ProblemType.UNKNOWN_MEMBER, name, unknown.told(), 1);
            }
        }
        if (!columns.containsKey("id")) {
            throw headerProblem(ProblemType.MISSING_MEMBER, "id", "A column with this name is needed.", 1);
        }
    }

    private TableRow row(long line, CSVRecord record) {
        List<CellFault> faults = new ArrayList<>();
        Map<String, String> cells = new LinkedHashMap<>();
        String order = "";
        for (int i = 0; i < record.size(); i++) {
            String written = record.get(i);
            if (written.isEmpty()) {
                continue;
            }
            if (i >= names.size()) {
                faults.add(new CellFault(
                        ProblemType.UNKNOWN_MEMBER,
                        "",
                        "Cell " + (i + 1) + " has no column; the header has " + names.size() + "."));
                break;
            } else if (names.get(i).equals(Table.ORDER)) {
                order = written;
            } else {
                cells.put(names.get(i), written);
            }
        }
        Branch root = Branch.root();
        ordered(cells, order, faults).forEach((name, written) -> put(root, name, written, faults));
        Optional.ofNullable(root.gap("")).ifPresent(gap -> faults.add(misfit(gap)));
        return new TableRow(line, faults.isEmpty() ? root.object() : mapper.createObjectNode(), faults);
    }

    /** First those that the row puts in order itself, then the others. */
    private Map<String, String> ordered(Map<String, String> cells, String order, List<CellFault> faults) {
        Map<String, String> ordered = new LinkedHashMap<>();
        for (String name : order.isEmpty() ? new String[0] : order.strip().split(" +")) {
            String written = cells.get(name);
            if (!columns.containsKey(name)) {
                faults.add(new CellFault(ProblemType.UNKNOWN_VALUE, Table.ORDER, "No column is named " + name + "."));
            } else if (written != null) {
                ordered.put(name, written);
            }
        }
        cells.forEach(ordered::putIfAbsent);
        return ordered;
    }

    private void put(Branch root, String name, String written, List<CellFault> faults) {
        Column column = columns.get(name);
        if (column == null) {
            throw new IllegalStateException("a cell without a column: " + name);
        }
        try {
            Branch.Misfit misfit = root.put(column, cell.read(written, column.shape()));
            if (misfit != null) {
                faults.add(misfit(misfit));
            }
        } catch (Cell.Unreadable unreadable) {
            faults.add(new CellFault(ProblemType.WRONG_TYPE, name, unreadable.told()));
        }
    }

    private static CellFault misfit(Branch.Misfit misfit) {
        return new CellFault(ProblemType.INVALID_VALUE, misfit.path(), misfit.message());
    }
}
