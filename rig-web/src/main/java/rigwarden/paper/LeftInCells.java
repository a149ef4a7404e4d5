package rigwarden.paper;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.findings.Answer;
import rigwarden.findings.Finding;
import rigwarden.findings.Kind;

/** What the other cells still held when the first met its cut-off, a line for each discharge. */
final class LeftInCells {
    private static final String MARK = ", left in ";

    private LeftInCells() {}

    /** Whether a finding is one of those. */
    static boolean tells(Finding finding) {
        return finding.kind() == Kind.LIMITING_CELL && finding.about().contains(MARK) && said(finding.answer()).isPresent();
    }

    static List<String> lines(List<Finding> findings) {
        Map<String, List<String>> steps = new LinkedHashMap<>();
        for (Finding finding : findings) {
            if (tells(finding)) {
                int at = finding.about().indexOf(MARK);
                steps.computeIfAbsent(finding.about().substring(0, at), _ -> new ArrayList<>())
                        .add(finding.about().substring(at + MARK.length()) + " " + said(finding.answer()).orElseThrow());
            }
        }
        return steps.entrySet().stream().map(step -> "  LEFT IN THE OTHERS, " + step.getKey() + ": " + String.join(", ", step.getValue()) + " (Ah)").toList();
    }

    private static Optional<String> said(Answer answer) {
        return switch (answer) {
            case Answer.Between b -> Optional.of(Spots.say("%.2f to %.2f", b.low(), b.high()));
            case Answer.AtLeast a -> Optional.of(Spots.say("at least %.2f", a.value()));
            case Answer.Value _, Answer.Named _, Answer.CannotTell _, Answer.Decided _, Answer.NotDecided _, Answer.Refused _ -> Optional.empty();
        };
    }
}
