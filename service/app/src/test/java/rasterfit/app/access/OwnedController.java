package rasterfit.app.access;

import java.net.URI;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import rasterfit.app.problem.Problems;

/** Something private to its owner, to see that {@link EveryEndpointTest} finds and tries what is. */
@TestComponent
@RestController
class OwnedController {
    private final Map<String, String> owners = new ConcurrentHashMap<>();
    private final Callers callers;

    OwnedController(Callers callers) {
        this.callers = callers;
    }

    @Requires(Scope.WRITE)
    @PostMapping("/owned")
    ResponseEntity<Void> create() {
        String id = "thing-" + owners.size();
        owners.put(id, callers.current().owner());
        return ResponseEntity.created(URI.create("/owned/" + id)).build();
    }

    @Requires(Scope.READ)
    @GetMapping("/owned/{id}")
    Map<String, String> get(@PathVariable String id) {
        return Map.of("id", own(id));
    }

    @Requires(Scope.WRITE)
    @DeleteMapping("/owned/{id}")
    ResponseEntity<Void> delete(@PathVariable String id) {
        owners.remove(own(id));
        return ResponseEntity.noContent().build();
    }

    private String own(String id) {
        if (!callers.current().owner().equals(owners.get(id))) {
            throw Problems.notFound("thing \"" + id + "\"");
        }
        return id;
    }
}
