package rasterfit.app.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.context.ConfigurableApplicationContext;
import rasterfit.app.RasterfitApplication;
import rasterfit.app.access.AccessMode.Wanted;
import rasterfit.app.database.TestServer;

/** Who gets in first, and when the service does not start. */
@ExtendWith(OutputCaptureExtension.class)
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class StartUpTest {
    private static final String GOOD = "b3f1c09e77a24d58b3f1c09e77a24d58";

    private final String url = TestServer.newDatabase();

    @ParameterizedTest
    @CsvSource({
        "AUTO,     127.0.0.1, false, OPEN",
        "AUTO,     127.8.0.3, false, OPEN",
        "AUTO,     ::1,       false, OPEN",
        "AUTO,     localhost, false, OPEN",
        "AUTO,     127.0.0.1, true,  TOKENS",
        "REQUIRED, 127.0.0.1, false, TOKENS",
        "AUTO,     0.0.0.0,   false, TOKENS",
        "AUTO,     ::,        false, TOKENS",
        "AUTO,     192.0.2.7, false, TOKENS",
        "AUTO,     10.0.0.1,  false, TOKENS",
        "AUTO,     ,          false, TOKENS",
    })
    void onlyALoopbackAddressIsOpen(Wanted wanted, String address, boolean hasAdminToken, AccessMode expected)
            throws Exception {
        InetAddress bound = address == null ? null : InetAddress.getByName(address);
        assertThat(AccessMode.of(wanted, bound, hasAdminToken)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--server.address=0.0.0.0", "--server.address=", "--rasterfit.access.tokens=required"})
    void withoutAnAdminTokenNothingButTheOpenLoopbackStarts(String argument, CapturedOutput log) {
        assertThatThrownBy(() -> start(argument).close()).hasRootCauseInstanceOf(StartRefusedException.class);
        assertThat(log.getOut())
                .contains("APPLICATION FAILED TO START", "no admin token", AdminToken.PROPERTY)
                .contains(AdminTokenCommand.ARGUMENT)
                .doesNotContain("\tat ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"secret", "0000000000000000000000000000000000000000", "a password of several words that is long"
            })
    void anAdminTokenThatCouldBeGuessedIsRefused(String token, CapturedOutput log) {
        assertThatThrownBy(() -> start("--" + AdminToken.PROPERTY + "=" + token).close())
                .hasRootCauseInstanceOf(StartRefusedException.class);
        assertThat(log.getOut()).contains("could be guessed").doesNotContain(token);
    }

    @Test
    void theConfiguredTokenOpensAnyAddress() throws Exception {
        try (ConfigurableApplicationContext service = start(
                "--server.address=0.0.0.0",
                "--" + AdminToken.PROPERTY + "=" + GOOD,
                "--rasterfit.access.admin-owner=chief")) {
            assertThat(call(service, null).statusCode()).isEqualTo(401);
            assertThat(call(service, GOOD).body()).contains("\"owner\":\"chief\"", "ADMIN");
        }
    }

    @Test
    void theCommandPrintsOneTokenAndEndsAndWithItTheServiceStarts() throws Exception {
        List<String> printed = command();
        assertThat(printed).hasSize(1);
        String token = printed.get(0);
        assertThat(Secret.read(token)).isPresent();
        assertThat(command()).hasSize(1).doesNotContain(token);
        try (ConfigurableApplicationContext service = start("--server.address=0.0.0.0")) {
            assertThat(call(service, token).body()).contains("\"owner\":\"admin\"", "ADMIN", "\"tokenId\"");
            // Once the last one is revoked, the next start would let nobody in.
            Tokens tokens = service.getBean(Tokens.class);
            tokens.list("admin", null, 10).forEach(one -> tokens.revoke(one.id()));
            assertThat(call(service, token).statusCode()).isEqualTo(401);
        }
        assertThatThrownBy(() -> start("--server.address=0.0.0.0").close())
                .hasRootCauseInstanceOf(StartRefusedException.class);
    }

    @Test
    void noPasswordIsMadeUpAndNoneIsLogged(CapturedOutput log) {
        start("--rasterfit.access.tokens=auto").close();
        assertThat(log.getOut())
                .contains("whoever uses this machine may do everything")
                .doesNotContainIgnoringCase("password: ")
                .doesNotContainIgnoringCase("generated security password");
    }

    private ConfigurableApplicationContext start(String... arguments) {
        List<String> all = new ArrayList<>(List.of(arguments));
        all.add("--server.port=0");
        all.add("--spring.datasource.url=" + url);
        return new SpringApplicationBuilder(RasterfitApplication.class).run(all.toArray(String[]::new));
    }

    /** What a real process prints. */
    private List<String> command() throws Exception {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        RasterfitApplication.class.getName(),
                        AdminTokenCommand.ARGUMENT,
                        "--spring.datasource.url=" + url)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(out).isZero();
        return out.lines().toList();
    }

    private static HttpResponse<String> call(ConfigurableApplicationContext service, String token) throws Exception {
        String port = service.getEnvironment().getProperty("local.server.port");
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/v1/owner"));
        if (token != null) {
            request.header("Authorization", "Bearer " + token);
        }
        return HttpClient.newHttpClient().send(request.build(), BodyHandlers.ofString());
    }
}
