package rasterfit.app.access;

import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** The tokens of an owner, without what they are recognised by. */
@Component
class TokenData implements OwnerData {
    private final TokenStore store;
    private final Tokens tokens;
    private final ObjectMapper mapper;

    TokenData(TokenStore store, Tokens tokens, ObjectMapper mapper) {
        this.store = store;
        this.tokens = tokens;
        this.mapper = mapper;
    }

    @Override
    public String section() {
        return "tokens";
    }

    @Override
    public JsonNode export(String owner) {
        return mapper.valueToTree(store.list(owner, "", Integer.MAX_VALUE));
    }

    @Override
    public void delete(String owner) {
        List<String> deleted = store.deleteOf(owner);
        TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
            @Override
            public void afterCommit() {
                deleted.forEach(tokens::forget);
            }
        });
    }
}
