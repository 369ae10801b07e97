package rasterfit.app.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The embedded server over its life: kept data, a second instance, an instance that was killed. */
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class EmbeddedServerTest {
    @TempDir
    Path directory;

    @Test
    void dataAreThereAfterARestartAndWritesWaitForTheDisk() throws Exception {
        try (EmbeddedServer server = EmbeddedServer.start(directory)) {
            execute(server, "create table kept (value int)");
            execute(server, "insert into kept values (7)");
            assertThat(queried(server, "show fsync")).isEqualTo("on");
            assertThat(queried(server, "show synchronous_commit")).isEqualTo("on");
            assertThat(queried(server, "show full_page_writes")).isEqualTo("on");
            assertThat(queried(server, "show listen_addresses")).isEqualTo("127.0.0.1");
            assertThat(queried(server, "show server_version")).startsWith(EmbeddedServer.MAJOR_VERSION + ".");
            assertThat(Path.of(queried(server, "show data_directory"))).startsWith(directory);
            // Programs are started from there.
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(directory)))
                    .isEqualTo("rwx------");
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(directory.resolve("binaries"))))
                    .isEqualTo("rwx------");
        }
        try (EmbeddedServer server = EmbeddedServer.start(directory)) {
            assertThat(queried(server, "select value from kept")).isEqualTo("7");
        }
    }

    @Test
    void aSecondInstanceIsToldWhoUsesTheDirectory() throws Exception {
        try (EmbeddedServer first = EmbeddedServer.start(directory)) {
            assertThatThrownBy(() -> EmbeddedServer.start(directory))
                    .isInstanceOf(DirectoryInUseException.class)
                    .hasMessageContaining(directory.toString())
                    .satisfies(refused -> assertThat(((DirectoryInUseException) refused).remedy())
                            .contains(DataDirectory.VARIABLE));
            assertThat(queried(first, "select 1")).isEqualTo("1");
        }
    }

    @Test
    void aLiveInstanceOfAnotherProcessKeepsItsServer() throws Exception {
        Process other = Other.start(directory);
        try {
            String url = Other.url(other);
            assertThatThrownBy(() -> EmbeddedServer.start(directory)).isInstanceOf(DirectoryInUseException.class);
            assertThat(queried(url, "select 1")).isEqualTo("1");
        } finally {
            kill(other);
            OrphanedServer.stop(data());
        }
    }

    @Test
    void theServerOfAKilledInstanceIsStoppedAndWhatItConfirmedIsThere() throws Exception {
        Process other = Other.start(directory);
        String url = Other.url(other);
        try (Connection connection = DriverManager.getConnection(url, EmbeddedServer.USER, "");
                Statement statement = connection.createStatement()) {
            statement.execute("create table kept (value int)");
            statement.execute("insert into kept values (9)");
        }
        kill(other);
        ProcessHandle orphan = OrphanedServer.find(data()).orElseThrow();
        assertThat(orphan.isAlive()).isTrue();
        try (EmbeddedServer server = EmbeddedServer.start(directory)) {
            assertThat(orphan.isAlive()).isFalse();
            assertThat(queried(server, "select value from kept")).isEqualTo("9");
        }
        assertThat(OrphanedServer.find(data())).isEmpty();
    }

    @Test
    void theDirectoryDoesNotDependOnWhereTheCommandWasStarted() {
        assertThat(DataDirectory.of(Map.of(DataDirectory.VARIABLE, "/srv/x/../data"), "/home/a"))
                .isEqualTo(Path.of("/srv/data"));
        // XDG Base Directory Specification 0.8: relative paths are invalid and ignored.
        assertThat(DataDirectory.of(Map.of("XDG_DATA_HOME", "/var/a"), "/home/a"))
                .isEqualTo(Path.of("/var/a/rasterfit"));
        assertThat(DataDirectory.of(Map.of("XDG_DATA_HOME", "a"), "/home/a"))
                .isEqualTo(Path.of("/home/a/.local/share/rasterfit"));
        assertThat(DataDirectory.of(Map.of(DataDirectory.VARIABLE, " "), "/home/a"))
                .isEqualTo(Path.of("/home/a/.local/share/rasterfit"));
    }

    private Path data() {
        return directory.resolve("postgresql-" + EmbeddedServer.MAJOR_VERSION);
    }

    private static void kill(Process process) throws InterruptedException {
        process.destroyForcibly();
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
    }

    private static void execute(EmbeddedServer server, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(server.jdbcUrl(), EmbeddedServer.USER, "");
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static String queried(EmbeddedServer server, String sql) throws SQLException {
        return queried(server.jdbcUrl(), sql);
    }

    private static String queried(String url, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(url, EmbeddedServer.USER, "");
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            assertThat(rows.next()).isTrue();
            return rows.getString(1);
        }
    }

    /** Another instance, in a process of its own, that only starts its server. */
    public static final class Other {
        private Other() {}

        public static void main(String[] args) throws InterruptedException {
            EmbeddedServer server = EmbeddedServer.start(Path.of(args[0]));
            System.out.println("url " + server.jdbcUrl());
            Thread.sleep(TimeUnit.MINUTES.toMillis(5));
        }

        static Process start(Path directory) throws Exception {
            return new ProcessBuilder(List.of(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            Other.class.getName(),
                            directory.toString()))
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        }

        static String url(Process other) throws Exception {
            BufferedReader out =
                    new BufferedReader(new InputStreamReader(other.getInputStream(), StandardCharsets.UTF_8));
            for (String line = out.readLine(); line != null; line = out.readLine()) {
                if (line.startsWith("url ")) {
                    return line.substring(4);
                }
            }
            throw new AssertionError("the other instance ended");
        }
    }
}
