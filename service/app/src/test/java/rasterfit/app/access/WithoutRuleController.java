package rasterfit.app.access;

import org.springframework.boot.test.context.TestComponent;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** What a developer forgot to give a scope. */
@TestComponent
@RestController
class WithoutRuleController {
    static final String PATH = "/without-rule";

    @GetMapping(PATH)
    String answer() {
        return "\"never seen\"";
    }
}
