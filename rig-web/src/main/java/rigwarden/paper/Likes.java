package rigwarden.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import rigwarden.findings.Answer;
import rigwarden.findings.Finding;
import rigwarden.findings.Kind;

/** Findings that are alike but for the number of their step: of hundreds a person reads the first few, and what all come to. */
final class Likes {
    private static final int MANY = 20;
    private static final int SHOWN = 3;

    private final Map<String, List<Finding>> alike;
    private final Map<String, Integer> met = new HashMap<>();

    Likes(List<Finding> findings) {
        alike = findings.stream().collect(Collectors.groupingBy(Likes::key, LinkedHashMap::new, Collectors.toList()));
    }

    private static String key(Finding finding) {
        String why = finding.answer() instanceof Answer.Refused refused ? refused.because() : finding.answer().getClass().getSimpleName();
        return finding.kind().word() + "|" + finding.about().replaceFirst("^step \\d+", "steps") + "|" + why;
    }

    /** Whether this one is to be read; asked once for each. */
    boolean shown(Finding finding) {
        String key = key(finding);
        return alike.get(key).size() <= MANY || met.merge(key, 1, Integer::sum) <= SHOWN;
    }

    /** A line for each kind of which not all were shown. */
    List<String> rest() {
        List<String> lines = new ArrayList<>();
        alike.values().stream().filter(many -> many.size() > MANY).forEach(many -> lines.add("  " + line(many)));
        return lines;
    }

    private static String line(List<Finding> many) {
        Finding first = many.getFirst();
        String what = Spots.say("and %d more like \"%s, %s\"; --json has them all", many.size() - SHOWN, first.kind().word(), first.about());
        List<Answer.Value> values = many.stream().map(Finding::answer).filter(Answer.Value.class::isInstance).map(Answer.Value.class::cast).toList();
        boolean flows = first.kind() == Kind.CHARGE || first.kind() == Kind.ENERGY;
        return values.isEmpty() || !flows ? what : what + Spots.say(". All together: %s %s in, %s %s out",
                Spots.number(4, values.stream().mapToDouble(v -> Math.max(0, v.value())).sum()), values.getFirst().unit(),
                Spots.number(4, values.stream().mapToDouble(v -> Math.max(0, -v.value())).sum()), values.getFirst().unit());
    }
}
