package rigwarden.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.Case;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Outcome.Noticed;
import rigwarden.warden.LameWarden;
import rigwarden.warden.Rule;
import rigwarden.warden.Severity;
import rigwarden.warden.Warden;

/** Cases in which a rule acted first, run again by a warden that is blind in that rule. */
final class LeaveOneOut {
    /** Later than the whole warden by less than this is the same. */
    private static final double SAME_SECONDS = 0.05;
    /** What becomes of a case without the rule, the worst first. */
    enum Without {
        UNSAFE("unsafe"),
        UNNOTICED("not tripped"),
        LATER("tripped later"),
        NAMED_OTHERWISE("named otherwise"),
        SAME("the same");

        private final String words;

        Without(String words) {
            this.words = words;
        }
    }

    /** One case with and without. */
    record Pair(Outcome whole, Outcome lame) {
        Without without() {
            if (lame.unsafe() && !whole.unsafe()) {
                return Without.UNSAFE;
            }
            boolean missed = switch (whole.noticed()) {
                case TRIPPED -> lame.noticed() != Noticed.TRIPPED;
                case NOTICE -> lame.noticed() == Noticed.HELD || lame.noticed() == Noticed.UNSEEN;
                case HELD, UNSEEN -> false;
            };
            if (missed) {
                return Without.UNNOTICED;
            }
            if (lame.seconds().orElse(0) > whole.seconds().orElse(0) + SAME_SECONDS) {
                return Without.LATER;
            }
            return lame.rule().equals(whole.rule()) ? Without.SAME : Without.NAMED_OTHERWISE;
        }
    }

    private final Map<Integer, List<Pair>> byRule = new TreeMap<>();

    /** Runs, for each rule, the first cases in which it acted first, without it; at most so many for a rule. */
    static LeaveOneOut of(Campaign campaign, List<Outcome> outcomes, int most) {
        Map<Integer, List<Outcome>> acted = new TreeMap<>();
        for (Outcome outcome : outcomes) {
            outcome.rule().map(Rule::number).filter(n -> n < 60)
                    .ifPresent(n -> acted.computeIfAbsent(n, _ -> new ArrayList<>()).add(outcome));
        }
        List<Outcome> chosen = acted.values().stream().flatMap(list -> list.stream().limit(most)).toList();
        List<Case> cases = chosen.stream().map(Outcome::what).toList();
        List<Warden> blind = chosen.stream()
                .map(o -> LameWarden.without(o.what().night().scene().rig(), o.rule().orElseThrow().number())).toList();
        List<Outcome> lame = campaign.again(cases, blind);
        LeaveOneOut table = new LeaveOneOut();
        for (int i = 0; i < chosen.size(); i++) {
            table.byRule.computeIfAbsent(chosen.get(i).rule().orElseThrow().number(), _ -> new ArrayList<>())
                    .add(new Pair(chosen.get(i), lame.get(i)));
        }
        return table;
    }

    /** What is worst without each rule that acted. */
    Map<Integer, Without> worst() {
        Map<Integer, Without> worst = new TreeMap<>();
        byRule.forEach((rule, pairs) -> worst.put(rule, pairs.stream().map(Pair::without).sorted().findFirst().orElseThrow()));
        return worst;
    }

    /** Rules without which at least one case is unsafe, not tripped at all, or tripped later. */
    Set<Integer> missed() {
        return worst().entrySet().stream().filter(e -> e.getValue().compareTo(Without.NAMED_OTHERWISE) < 0).map(Map.Entry::getKey)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The table: a line for each rule, and the worst case of it. */
    List<String> lines() {
        List<String> lines = new ArrayList<>(List.of("", "Without the rule that acted first:",
                String.format("  %-32s %6s ", "rule", "cases") + Arrays.stream(Without.values()).map(w -> w.words).collect(Collectors.joining(" "))));
        byRule.forEach((_, pairs) -> {
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "  %-32s %6d", named(pairs.getFirst().whole()), pairs.size()));
            for (Without without : Without.values()) {
                long count = pairs.stream().filter(p -> p.without() == without).count();
                line.append(String.format(Locale.ROOT, " %" + without.words.length() + "d", count));
            }
            lines.add(line.toString());
        });
        byRule.forEach((_, pairs) -> {
            Pair worst = pairs.stream().min((a, b) -> a.without().compareTo(b.without())).orElseThrow();
            lines.add(String.format(Locale.ROOT, "  without %s, case %d is %s: %s", named(worst.whole()), worst.whole().what().number(),
                    worst.without().words, worst.lame().words().replaceAll("\\s+", " ")));
        });
        return lines;
    }

    private static String named(Outcome outcome) {
        Rule rule = outcome.rule().orElseThrow();
        return rule + (rule.severity() == Severity.WARNS ? " (notice)" : "");
    }
}
