package rasterfit.app.problem;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ReadListener;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletInputStream;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletRequestWrapper;
import jakarta.servlet.http.HttpServletResponse;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Answers 413 to a body beyond its limit, which is {@link #GREATEST_BYTES} unless a {@link BodyLimit} says otherwise: at
 * once when it declares its length, else while it is read.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
final class BodyLimitFilter extends OncePerRequestFilter {

    /** 1 MiB (assumption): a full request with inline gear is a few tens of KiB. */
    static final int GREATEST_BYTES = 1 << 20;

    private final ProblemWriter writer;
    private final Map<String, Integer> limits;

    BodyLimitFilter(ProblemWriter writer, List<BodyLimit> limits) {
        this.writer = writer;
        this.limits = limits.stream().collect(Collectors.toMap(BodyLimit::path, BodyLimit::greatestBytes));
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        int greatestBytes = limits.getOrDefault(request.getRequestURI(), GREATEST_BYTES);
        if (request.getContentLengthLong() > greatestBytes) {
            writer.write(tooLarge(greatestBytes), request, response);
        } else {
            chain.doFilter(new LimitedRequest(request, greatestBytes), response);
        }
    }

    private static ProblemException tooLarge(int greatestBytes) {
        return Problems.of(
                ProblemType.CONTENT_TOO_LARGE,
                List.of(ProblemError.at(
                        "", "The body is larger than " + greatestBytes + " bytes.", Integer.toString(greatestBytes))));
    }

    private static final class LimitedRequest extends HttpServletRequestWrapper {
        private final int greatestBytes;

        LimitedRequest(HttpServletRequest request, int greatestBytes) {
            super(request);
            this.greatestBytes = greatestBytes;
        }

        @Override
        public ServletInputStream getInputStream() throws IOException {
            return new LimitedStream(super.getInputStream(), greatestBytes);
        }

        @Override
        public BufferedReader getReader() throws IOException {
            String encoding = getCharacterEncoding();
            Charset charset = encoding == null ? StandardCharsets.UTF_8 : Charset.forName(encoding);
            return new BufferedReader(new InputStreamReader(getInputStream(), charset));
        }
    }

    private static final class LimitedStream extends ServletInputStream {

        private final ServletInputStream body;
        private final int greatestBytes;
        private long count;

        LimitedStream(ServletInputStream body, int greatestBytes) {
            this.body = body;
            this.greatestBytes = greatestBytes;
        }

        @Override
        public int read() throws IOException {
            int value = body.read();
            count(value < 0 ? 0 : 1);
            return value;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int read = body.read(buffer, offset, length);
            count(Math.max(0, read));
            return read;
        }

        private void count(int bytes) {
            count += bytes;
            if (count > greatestBytes) {
                throw tooLarge(greatestBytes);
            }
        }

        @Override
        public boolean isFinished() {
            return body.isFinished();
        }

        @Override
        public boolean isReady() {
            return body.isReady();
        }

        @Override
        public void setReadListener(ReadListener listener) {
            body.setReadListener(listener);
        }
    }
}
