package rasterfit.app.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.postgresql.ds.PGSimpleDataSource;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.core.io.ClassPathResource;
import org.springframework.core.io.Resource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.init.ResourceDatabasePopulator;
import rasterfit.app.RasterfitApplication;
import rasterfit.app.catalogue.Catalogues;

/**
 * Databases of every earlier version, with data in them, become what the service needs now and lose nothing. {@code
 * migration/V<n>.sql} in the test resources holds data as version n of the tables takes them.
 */
class MigrationTest {
    private final String url = TestServer.newDatabase();
    private final PGSimpleDataSource dataSource = dataSource(url);
    private final JdbcClient database = JdbcClient.create(dataSource);

    static IntStream versions() {
        return IntStream.rangeClosed(1, newest());
    }

    @ParameterizedTest
    @MethodSource("versions")
    void everyRowOfAnEarlierVersionIsKept(int version) {
        live(version);
        Map<String, List<String>> before = rows();
        assertThat(before.values().stream().mapToInt(List::size).sum()).isPositive();
        flyway("latest").migrate();
        before.forEach((table, rows) -> {
            assertThat(count(table)).as(table).isEqualTo(rows.size());
            rows.forEach(
                    row -> assertThat(kept(table, row)).as(table + " " + row).isTrue());
        });
        flyway("latest").validate();
    }

    @Test
    void theServiceGoesOnWithADatabaseOfTheFirstVersion() {
        live(1);
        try (var service = new SpringApplicationBuilder(RasterfitApplication.class)
                .web(WebApplicationType.NONE)
                .run("--spring.datasource.url=" + url)) {
            var catalogue = service.getBean(Catalogues.class).current();
            assertThat(catalogue.revision()).isEqualTo(4);
            // What was deleted stays deleted, and the demo gear is not put into a catalogue that someone wrote.
            assertThat(catalogue.links().keySet()).containsExactly("old-lead", "other-lead");
        }
    }

    @Test
    void migrationsOnlyGoForward() {
        MigrationInfo[] all = flyway("latest").info().all();
        assertThat(Arrays.stream(all).map(MigrationInfo::getScript))
                .isNotEmpty()
                .allSatisfy(script -> assertThat(script).matches("V\\d+__[a-z_]+\\.sql"));
        assertThat(Arrays.stream(all).map(one -> one.getVersion().toString()))
                .containsExactlyElementsOf(
                        versions().mapToObj(Integer::toString).toList());
    }

    /** A database that was used by each version up to this one. */
    private void live(int version) {
        for (int step = 1; step <= version; step++) {
            flyway(Integer.toString(step)).migrate();
            new ResourceDatabasePopulator(data(step)).execute(dataSource);
        }
    }

    private static Resource data(int version) {
        Resource data = new ClassPathResource("migration/V" + version + ".sql");
        assertThat(data.exists()).as("data for version " + version).isTrue();
        return data;
    }

    /** Every row of every table as JSON. */
    private Map<String, List<String>> rows() {
        Map<String, List<String>> rows = new LinkedHashMap<>();
        List<String> tables = database.sql("select tablename from pg_tables where schemaname = 'public'"
                        + " and tablename <> 'flyway_schema_history' order by tablename")
                .query(String.class)
                .list();
        tables.forEach(table -> rows.put(
                table,
                database.sql("select to_jsonb(t)::text from " + table + " t")
                        .query(String.class)
                        .list()));
        return rows;
    }

    /** Columns may have been added to it. */
    private boolean kept(String table, String row) {
        return database.sql("select count(*) from " + table + " t where to_jsonb(t) @> cast(? as jsonb)")
                        .param(row)
                        .query(Long.class)
                        .single()
                > 0;
    }

    private long count(String table) {
        return database.sql("select count(*) from " + table).query(Long.class).single();
    }

    private Flyway flyway(String target) {
        return Flyway.configure().dataSource(dataSource).target(target).load();
    }

    private static int newest() {
        return Flyway.configure()
                .dataSource(dataSource(TestServer.newDatabase()))
                .load()
                .info()
                .all()
                .length;
    }

    private static PGSimpleDataSource dataSource(String url) {
        PGSimpleDataSource dataSource = new PGSimpleDataSource();
        dataSource.setUrl(url);
        return dataSource;
    }
}
