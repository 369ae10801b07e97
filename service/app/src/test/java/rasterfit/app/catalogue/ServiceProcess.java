package rasterfit.app.catalogue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rasterfit.app.RasterfitApplication;

/** The service in a process of its own, which can be killed. */
public final class ServiceProcess implements AutoCloseable {
    private static final Pattern STARTED = Pattern.compile("Tomcat started on port (\\d+)");

    private final Process process;
    private final int port;

    private ServiceProcess(Process process, int port) {
        this.process = process;
        this.port = port;
    }

    /** Waits until it takes requests. */
    public static ServiceProcess start(String databaseUrl) throws Exception {
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        RasterfitApplication.class.getName(),
                        "--server.port=0",
                        "--spring.datasource.url=" + databaseUrl))
                .redirectErrorStream(true)
                .start();
        BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        List<String> said = new ArrayList<>();
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            said.add(line);
            Matcher started = STARTED.matcher(line);
            if (started.find()) {
                drain(out);
                return new ServiceProcess(process, Integer.parseInt(started.group(1)));
            }
        }
        throw new AssertionError("the service ended: " + String.join("\n", said));
    }

    /** So that it never waits for someone to read what it says. */
    private static void drain(BufferedReader out) {
        Thread reader = new Thread(() -> out.lines().forEach(line -> {}), "output of the service");
        reader.setDaemon(true);
        reader.start();
    }

    public String url(String path) {
        return "http://127.0.0.1:" + port + path;
    }

    /** With SIGKILL: nothing in it gets to end anything. */
    @Override
    public void close() {
        process.destroyForcibly().onExit().join();
    }
}
