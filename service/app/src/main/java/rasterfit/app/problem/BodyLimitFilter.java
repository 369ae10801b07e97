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
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/** Answers 413 to a body beyond {@link #GREATEST_BYTES}: at once when it declares its length, else while it is read. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
final class BodyLimitFilter extends OncePerRequestFilter {

    /** 1 MiB (assumption): a full request with inline gear is a few tens of KiB. */
    static final int GREATEST_BYTES = 1 << 20;

    private final ProblemWriter writer;

    BodyLimitFilter(ProblemWriter writer) {
        this.writer = writer;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getContentLengthLong() > GREATEST_BYTES) {
            writer.write(tooLarge(), request, response);
        } else {
            chain.doFilter(new LimitedRequest(request), response);
        }
    }

    private static ProblemException tooLarge() {
        return Problems.of(
                ProblemType.CONTENT_TOO_LARGE,
                List.of(ProblemError.at(
                        "",
                        "The body is larger than " + GREATEST_BYTES + " bytes.",
                        Integer.toString(GREATEST_BYTES))));
    }

    private static final class LimitedRequest extends HttpServletRequestWrapper {

        LimitedRequest(HttpServletRequest request) {
            super(request);
        }

        @Override
        public ServletInputStream getInputStream() throws IOException {
            return new LimitedStream(super.getInputStream());
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
        private long count;

        LimitedStream(ServletInputStream body) {
            this.body = body;
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
            if (count > GREATEST_BYTES) {
                throw tooLarge();
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
