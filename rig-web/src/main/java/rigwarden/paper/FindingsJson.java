package rigwarden.paper;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rigwarden.findings.Answer;
import rigwarden.findings.Budget;
import rigwarden.findings.Finding;

/** The findings of a run for a program: plain maps, ready to be written. */
public final class FindingsJson {
    private FindingsJson() {}

    /** Everything that the text says, with the numbers unrounded. */
    public static Map<String, Object> of(int number, RunFindings run) {
        Map<String, Object> whole = new LinkedHashMap<>();
        whole.put("run", number);
        whole.put("rig", run.rig().name());
        run.imported().ifPresent(from -> whole.put("imported", from));
        whole.put("rehearsal", run.rehearsal());
        whole.put("parts", run.parts().stream().map(FindingsJson::part).toList());
        run.lost().ifPresent(why -> whole.put("lost", why));
        whole.put("rows", run.rows());
        whole.put("missing_rows", run.missingRows());
        whole.put("coverage", Budget.COVERAGE);
        whole.put("answers", run.headlines().stream().map(Sentence::of).toList());
        whole.put("findings", run.findings().stream().map(finding -> one(run, finding)).toList());
        return whole;
    }

    private static Map<String, Object> part(RunFindings.Part part) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("run", part.run());
        map.put("scans_before", part.scansBefore());
        part.goesOnAtStep().ifPresent(step -> map.put("goes_on_at_step", step));
        return map;
    }

    private static Map<String, Object> one(RunFindings run, Finding finding) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("kind", finding.kind().word());
        map.put("about", finding.about());
        answer(finding.answer(), map);
        map.put("conditions", finding.conditions());
        map.put("notes", finding.notes());
        map.put("method", finding.kind().method(run.rig()));
        map.put("scans", List.of(own(run, finding.firstScan()), own(run, finding.lastScan())));
        if (run.parts().size() > 1) {
            map.put("scans_are_of_runs", List.of(run.partOf(finding.firstScan()).run(), run.partOf(finding.lastScan()).run()));
        }
        return map;
    }

    /** Number of a scan in the run that it is of. */
    private static long own(RunFindings run, long scan) {
        return scan - run.partOf(scan).scansBefore();
    }

    private static void answer(Answer answer, Map<String, Object> map) {
        switch (answer) {
            case Answer.Value v -> {
                map.put("answer", "value");
                measured(v.value(), v.unit(), v.budget(), map);
            }
            case Answer.AtLeast a -> {
                map.put("answer", "at_least");
                measured(a.value(), a.unit(), a.budget(), map);
                map.put("because", a.because());
            }
            case Answer.Between b -> {
                map.put("answer", "between");
                map.put("low", b.low());
                map.put("high", b.high());
                map.put("unit", b.unit());
                map.put("because", b.because());
            }
            case Answer.Named n -> {
                map.put("answer", "named");
                map.put("who", n.who());
                map.put("because", n.because());
            }
            case Answer.CannotTell c -> {
                map.put("answer", "cannot_tell");
                map.put("between", c.between());
                map.put("because", c.because());
            }
            case Answer.Decided d -> {
                map.put("answer", d.met() ? "met" : "not_met");
                map.put("probability", d.probability());
                map.put("against", d.against());
                measured(d.at().value(), d.at().unit(), d.at().budget(), map);
            }
            case Answer.NotDecided n -> {
                map.put("answer", "not_decided");
                n.probability().ifPresent(met -> map.put("probability_met", met));
                map.put("because", n.because());
                map.put("against", n.against());
                measured(n.at().value(), n.at().unit(), n.at().budget(), map);
            }
            case Answer.Refused r -> {
                map.put("answer", "not_said");
                map.put("because", r.because());
            }
        }
    }

    private static void measured(double value, String unit, Budget budget, Map<String, Object> map) {
        map.put("value", value);
        map.put("unit", unit);
        map.put("expanded", budget.expanded());
        map.put("k", budget.factor());
        map.put("degrees_of_freedom", Double.isInfinite(budget.freedom()) ? "infinite" : budget.freedom());
        map.put("budget", budget.terms().stream().map(FindingsJson::term).toList());
        map.put("largest", budget.largest().name());
        map.put("to_shrink_it", Shrinking.of(value, budget, unit));
    }

    private static Map<String, Object> term(Budget.Term term) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("name", term.name());
        map.put("standard", term.standard());
        map.put("shape", term.rectangular() ? "rectangular" : "normal");
        return map;
    }
}
