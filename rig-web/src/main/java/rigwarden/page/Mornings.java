package rigwarden.page;

import java.nio.file.Path;
import java.util.Optional;
import rigwarden.live.Left;
import rigwarden.live.Plan;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.RunReader;
import rigwarden.paper.Card;
import rigwarden.paper.MorningCard;
import rigwarden.paper.StoredRun;

/** Morning cards of stored runs. */
public final class Mornings {
    private Mornings() {}

    /** The card of a run, made from its file: seconds for a night; none where this version refuses its rig or programme. */
    public static Optional<Card> card(LedgerRun run, Path file) {
        try (RunReader reader = RunReader.open(file)) {
            boolean rehearsal = reader.about().rehearsal();
            return StoredRun.whole(file).map(stored -> card(run, rehearsal, stored));
        }
    }

    private static Card card(LedgerRun run, boolean rehearsal, StoredRun stored) {
        Left left = Plan.left(stored.rig(), stored.program(), stored.told().steps());
        return MorningCard.of(run.number(), stored.rig(), stored.program(), new MorningCard.Known(run.outcome(), run.words(),
                rehearsal, stored.told(), stored.trip(), left.words(), left.care() == Left.Care.RECHARGE));
    }
}
