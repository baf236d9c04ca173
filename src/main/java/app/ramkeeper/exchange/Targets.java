package app.ramkeeper.exchange;

import org.springframework.stereotype.Component;

/** Finds the target of a kind of import. */
@Component
class Targets {

    private final RegisterTarget register;
    private final HistoryTarget history;

    Targets(RegisterTarget register, HistoryTarget history) {
        this.register = register;
        this.history = history;
    }

    Target of(ImportKind kind) {
        return kind == ImportKind.REGISTER ? register : history;
    }
}
