package rigwarden.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rigwarden.findings.Answer;
import rigwarden.findings.Budget;
import rigwarden.findings.Finding;
import rigwarden.findings.Kind;
import rigwarden.rig.Rig;

/** The findings of a run for a person: the answers first, then how sure and why, then what would make them surer. */
public final class FindingsText {
    /** Those that a person asks for first. */
    private static final List<Kind> FIRST = List.of(Kind.CAPACITY, Kind.VERDICT, Kind.LIMITING_CELL, Kind.JOINT, Kind.SPOT, Kind.PROTECTION, Kind.HEAT);

    private FindingsText() {}

    /**
     * The whole page, line by line.
     *
     * @param number of the run
     * @param later number of the run that went on with it, if one did
     */
    public static List<String> of(int number, RunFindings run, OptionalInt later) {
        List<String> lines = new ArrayList<>();
        lines.add(Spots.say("Run %04d on %s: what it found.", number, run.rig().name()));
        run.imported().ifPresent(from -> lines.add("A log from elsewhere: " + from + ". Each ± is as good as what the map states of its instruments."));
        if (run.rehearsal()) {
            lines.add("A rehearsal: every part was emulated, and nothing of this is about your cells.");
        }
        lines.addAll(parts(run));
        later.ifPresent(on -> lines.add(Spots.say("Run %04d went on with it: `rigwarden findings %d` answers for both.", on, on)));
        List<Finding> said = run.findings().stream().filter(f -> !refused(f)).sorted(Comparator.comparingInt(FindingsText::rank)).toList();
        lines.add("");
        lines.add("THE ANSWERS");
        run.headlines().forEach(headline -> lines.add("  " + Sentence.of(headline)));
        if (run.headlines().isEmpty()) {
            lines.add("  " + without(run));
        }
        run.headlines().stream().findFirst().ifPresent(headline -> lines.add("    the rating holds " + headline.rating().at().words()));
        lines.addAll(LeftInCells.lines(said));
        said.stream().filter(f -> rank(f) < FIRST.size()).filter(f -> !inSentence(f)).filter(f -> !LeftInCells.tells(f))
                .forEach(f -> lines.add("  " + answer(run, f)));
        lines.add("");
        lines.add("HOW SURE, AND WHY (± at 95.45 %)");
        Likes likes = new Likes(said);
        said.stream().filter(likes::shown).forEach(f -> lines.addAll(whole(run, f)));
        lines.addAll(likes.rest());
        lines.add("");
        lines.add("WHAT THIS RUN CANNOT SAY");
        List<Finding> refused = run.findings().stream().filter(FindingsText::refused).toList();
        Likes unsaid = new Likes(refused);
        refused.stream().filter(unsaid::shown).map(f -> "  " + answer(run, f)).distinct().forEach(lines::add);
        lines.addAll(unsaid.rest());
        lines.add("");
        lines.add(Spots.say("%s, %d missing. Each ± is of this measurement; it is no certificate.", run.rows() == 1 ? "1 row" : run.rows() + " rows", run.missingRows()));
        return lines;
    }

    /** Of which runs all this is. */
    static List<String> parts(RunFindings run) {
        List<String> lines = new ArrayList<>();
        List<String> breaks = new ArrayList<>();
        for (int i = 1; i < run.parts().size(); i++) {
            breaks.add(Spots.say("run %04d, which was broken off in step %d", run.parts().get(i - 1).run(), run.parts().get(i).goesOnAtStep().orElse(0)));
        }
        if (!breaks.isEmpty()) {
            lines.add("It went on with " + String.join(", and that with ", breaks.reversed()) + ": all here is of "
                    + (breaks.size() == 1 ? "both" : "all of them") + ", and such a step is one.");
        }
        run.lost().ifPresent(lines::add);
        return lines;
    }

    private static String scans(RunFindings run, Finding finding) {
        RunFindings.Part first = run.partOf(finding.firstScan());
        RunFindings.Part last = run.partOf(finding.lastScan());
        long from = finding.firstScan() - first.scansBefore();
        long to = finding.lastScan() - last.scansBefore();
        String one = from == to && first.equals(last) ? Spots.say("scan %d", from) : Spots.say("scans %d to %d", from, to);
        if (run.parts().size() == 1) {
            return one;
        }
        return first.equals(last) ? Spots.say("%s of run %d", one, last.run())
                : Spots.say("scan %d of run %d to scan %d of run %d", from, first.run(), to, last.run());
    }

    /** The answer of a run that gave no capacity. */
    private static String without(RunFindings run) {
        String why = run.findings().stream().filter(f -> f.kind() == Kind.CAPACITY).map(Finding::answer).filter(Answer.Refused.class::isInstance)
                .map(answer -> ((Answer.Refused) answer).because()).findFirst().orElse("no step ended");
        List<Answer> told = run.findings().stream().filter(f -> f.kind() == Kind.CHARGE).map(Finding::answer).toList();
        List<Answer.Value> charges = told.stream().filter(Answer.Value.class::isInstance).map(Answer.Value.class::cast).toList();
        return "No capacity: " + why + (charges.isEmpty() ? ", and no charge can be told." : Spots.say(". In %s %s Ah went in and %s Ah came out.",
                charges.size() == told.size() ? "all steps" : "the steps whose charge can be told", summed(charges, 1), summed(charges, -1)));
    }

    private static String summed(List<Answer.Value> charges, int sign) {
        return Spots.number(3, charges.stream().mapToDouble(c -> Math.max(0, sign * c.value())).sum());
    }

    /** A channel is called by the place that it looks at. */
    static String about(RunFindings run, Finding finding) {
        if (!(run.rig() instanceof Rig rig)) {
            return finding.about();
        }
        return Stream.of(finding.about().split(", ")).map(word -> rig.column(word).map(channel -> Spots.of(rig, channel)).orElse(word))
                .collect(Collectors.joining(", "));
    }

    private static boolean refused(Finding finding) {
        return finding.answer() instanceof Answer.Refused;
    }

    /** Whether the sentence at the top says it already: of the limiting cell the name, not what was left in the others. */
    private static boolean inSentence(Finding finding) {
        boolean named = finding.answer() instanceof Answer.Named || finding.answer() instanceof Answer.CannotTell;
        return finding.kind() == Kind.CAPACITY || finding.kind() == Kind.VERDICT || finding.kind() == Kind.LIMITING_CELL && named;
    }

    private static int rank(Finding finding) {
        int place = FIRST.indexOf(finding.kind());
        return place < 0 ? FIRST.size() + List.of(Kind.values()).indexOf(finding.kind()) : place;
    }

    private static List<String> whole(RunFindings run, Finding finding) {
        List<String> lines = new ArrayList<>();
        lines.add("  " + answer(run, finding));
        if (!finding.conditions().isEmpty()) {
            lines.add("    at: " + String.join("; ", finding.conditions()));
        }
        budget(finding.answer(), lines);
        finding.notes().forEach(note -> lines.add("    " + note));
        lines.add(Spots.say("    by: %s; %s", finding.kind().method(run.rig()), scans(run, finding)));
        return lines;
    }

    private static void budget(Answer answer, List<String> lines) {
        switch (answer) {
            case Answer.Value v -> lines.addAll(terms(v.value(), v.budget(), v.unit()));
            case Answer.AtLeast a -> lines.addAll(terms(a.value(), a.budget(), a.unit()));
            case Answer.Decided d -> held("at the rating's temperature", d.at(), lines);
            case Answer.NotDecided n -> held(n.probability().isEmpty() ? "as it was measured" : "at the rating's temperature", n.at(), lines);
            case Answer.Between _, Answer.Named _, Answer.CannotTell _, Answer.Refused _ -> { }
        }
    }

    private static void held(String where, Answer.Value at, List<String> lines) {
        lines.add("    " + where + ": " + Figures.both(at.value(), at.budget().expanded(), at.unit()));
        lines.addAll(terms(at.value(), at.budget(), at.unit()));
    }

    private static List<String> terms(double value, Budget budget, String unit) {
        String list = budget.terms().stream().filter(t -> t.standard() > 0 && !Figures.plain(t.standard()).matches("[0.]+"))
                .sorted(Comparator.comparingDouble(Budget.Term::standard).reversed())
                .map(t -> t.name() + " " + Figures.plain(t.standard())).collect(Collectors.joining(", "));
        return budget.combined() == 0 ? List.of() : List.of(
                Spots.say("    budget (u in %s, k = %.2f): %s", unit.isEmpty() ? "1" : unit, budget.factor(), list.isEmpty() ? "nothing that six decimals show" : list),
                "    largest: " + budget.largest().name() + "; " + Shrinking.of(value, budget, unit));
    }

    /** One line: what, of what, and what it comes to. */
    static String answer(RunFindings run, Finding finding) {
        String what = finding.kind().word().toUpperCase(Locale.ROOT) + ", " + about(run, finding) + ": ";
        return what + switch (finding.answer()) {
            case Answer.Value v -> Figures.both(v.value(), v.budget().expanded(), v.unit());
            case Answer.AtLeast a -> "at least " + Figures.both(a.value(), a.budget().expanded(), a.unit()) + ": " + a.because();
            case Answer.Between b -> Spots.say("between %s and %s %s: %s", Spots.number(3, b.low()), Spots.number(3, b.high()), b.unit(),
                    b.because());
            case Answer.Named n -> n.who() + " (" + n.because() + ")";
            case Answer.CannotTell c -> c.between() + ", cannot tell (" + c.because() + ")";
            case Answer.Decided d -> Spots.say("%s: %s, %s sure", d.against(), d.met() ? "met" : "not met", Sentence.percent(d.probability()));
            case Answer.NotDecided n -> n.against() + ": " + n.because() + (n.probability().isEmpty() ? ""
                    : " (as far as it goes, met with " + Sentence.percent(n.probability().getAsDouble()) + ")");
            case Answer.Refused r -> "not said: " + r.because();
        };
    }
}
