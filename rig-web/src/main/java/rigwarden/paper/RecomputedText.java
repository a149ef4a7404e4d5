package rigwarden.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rigwarden.findings.Answer;
import rigwarden.findings.Finding;
import rigwarden.rig.ChannelCalibration;

/** What a run found as it was recorded, beside what it would have found with other calibrations, for a person. */
public final class RecomputedText {
    private RecomputedText() {}

    /** The whole page, line by line. */
    public static List<String> of(int number, RunFindings recorded, List<Recomputed.Found> others) {
        List<String> lines = new ArrayList<>();
        lines.add(Spots.say("Run %04d on %s: what it would have found with other calibrations, from the chips' own codes.", number,
                recorded.rig().name()));
        if (recorded.rehearsal()) {
            lines.add("A rehearsal: every part was emulated, and nothing of this is about your cells.");
        }
        lines.addAll(FindingsText.parts(recorded));
        lines.add("");
        lines.add("as recorded: " + (recorded.rig().calibrations().isEmpty() ? "no calibration lay beside the rig file"
                : String.join("; ", recorded.rig().calibrations().stream().map(RecomputedText::words).toList())));
        for (int i = 0; i < others.size(); i++) {
            lines.add("with " + letter(i) + ": " + String.join("; ", others.get(i).given().stream().map(RecomputedText::words).toList()));
        }
        lines.add("");
        lines.add("THE FIGURES (± at 95.45 %)");
        Map<String, Finding> before = byName(recorded.findings());
        List<Map<String, Finding>> after = others.stream().map(other -> byName(other.found().findings())).toList();
        int same = 0;
        for (Map.Entry<String, Finding> one : before.entrySet()) {
            List<String> said = figure(one.getValue(), recorded, one.getKey(), others, after);
            same += said.isEmpty() ? 1 : 0;
            lines.addAll(said);
        }
        lines.add("");
        lines.add(same + " more are the same, or are not said, in all of them. What a run did (its trips and its ends) it did with the readings of its night.");
        return lines;
    }

    private static String letter(int place) {
        return String.valueOf((char) ('A' + place));
    }

    private static String words(ChannelCalibration one) {
        return Spots.say("%s, made %s, until %s: truth = %.6f × reading %+.6f", one.channel(), one.made(), one.expires(), one.gain(), one.offset());
    }

    /** By kind and what it is of; where that is the same, by order. */
    private static Map<String, Finding> byName(List<Finding> findings) {
        Map<String, Finding> named = new LinkedHashMap<>();
        Map<String, Integer> seen = new HashMap<>();
        for (Finding finding : findings) {
            String name = finding.kind() + ", " + finding.about();
            named.put(name + " " + seen.merge(name, 1, Integer::sum), finding);
        }
        return named;
    }

    /** Nothing where it is the same with each of them. */
    private static List<String> figure(Finding own, RunFindings recorded, String name, List<Recomputed.Found> others,
            List<Map<String, Finding>> after) {
        String told = FindingsText.answer(recorded, own);
        List<String> with = new ArrayList<>();
        boolean differs = false;
        for (int i = 0; i < others.size(); i++) {
            Finding other = after.get(i).get(name);
            String answer = other == null ? "not found" : FindingsText.answer(others.get(i).found(), other);
            differs |= !answer.equals(told);
            with.add(Spots.say("    with %s: %s; rests on %s", letter(i), bare(answer, FindingsText.about(recorded, own)),
                    RestsOn.words(others.get(i).found().rig(), own.kind())));
        }
        if (!differs) {
            return List.of();
        }
        with.addFirst("  " + told + (own.answer() instanceof Answer.Refused ? "" : "; rests on " + RestsOn.words(recorded.rig(), own.kind())));
        return with;
    }

    private static String bare(String answer, String about) {
        int at = answer.indexOf(about + ": ");
        return at < 0 ? answer : answer.substring(at + about.length() + 2);
    }
}
