package rigwarden.campaign;

import java.util.Map;

/** Why a kind of fault may not be noticed. One list; a kind without an entry is a question that nobody has answered yet. */
final class Blind {
    private static final Map<String, String> REASONS = Map.ofEntries(
            Map.entry("balancer works",
                    "its current goes past the shunt; told at rest as a cell that falls (rule 8), and nowhere else"),
            Map.entry("bus addressing",
                    "another chip of the same kind answers, whole and plausible: probes that are as warm as each other, taps that stand as high"),
            Map.entry("bus masquerade", "what is made up lies where a reading may lie, and not often enough in a row to last"),
            Map.entry("bus delay",
                    "an old answer is whole and true to itself: found only when what it shows ought to have moved"),
            Map.entry("bus repetition",
                    "an old answer is whole and true to itself: found only when what it shows ought to have moved"),
            Map.entry("bus shorted", "behind an open contactor nothing meets it; found at the next pre-charge"),
            Map.entry("bus wrong sequence",
                    "an old answer is whole and true to itself: found only when what it shows ought to have moved"),
            Map.entry("card stalls", "nothing is lost by a stall that the memory of the recorder bridges"),
            Map.entry("cell heats", "too slow to reach a limit within the case"),
            Map.entry("cell leaks",
                    "its current goes past the shunt and the voltage is flat; told at rest as a cell that falls (rule 8), found by its warmth or by the charge put in"),
            Map.entry("chip browns out", "written anew within a scan or two: it costs a reading"),
            Map.entry("chip frozen",
                    "at rest nothing moves; a probe's chip has no counter that must advance, and a joint at a small current stays as warm as it was"),
            Map.entry("computer stalls", "within the three periods that a scan may come late"),
            Map.entry("contact stays open", "not needed just then; found when it is ordered to close"),
            Map.entry("contact welds",
                    "it should be closed just then, or another one in its path is open; the relay of a device has no feedback, so that only a proof finds it"),
            Map.entry("device deaf", "it goes on with what it last heard, which is what is wanted until the next order"),
            Map.entry("device meter reads off", "nothing is decided by a device's own volts, which are judged by what it could give or take at most"),
            Map.entry("divider drifts", "within what taps, pack and bus may differ by"),
            Map.entry("heartbeat stage slow", "it holds while beats come; proved in the first minute of a run and not again"),
            Map.entry("heartbeat stage stuck high", "no beats are sent at rest; found at the next closing"),
            Map.entry("heartbeat stage stuck low", "no beats are sent at rest; found at the next closing"),
            Map.entry("input shorted", "at 0 V anyway: the bus of an open contactor"),
            Map.entry("input stuck high",
                    "it shows what it should show just then; a loop or a coil feed that can no longer fall is found by a proof only"),
            Map.entry("input stuck low", "it shows what it should show just then"),
            Map.entry("joint comes off", "without current nothing shows it; found when current flows next"),
            Map.entry("joint loosens",
                    "one cell has no likes to be compared with, a small current warms no stud, and rule 6 is blind below 3.0 V and above 3.5 V"),
            Map.entry("link fails",
                    "a device that is alive and deaf goes on with what it last heard, which is what is wanted until the next order"),
            Map.entry("output stuck high",
                    "high just then, or another contact in its path is open; a device's relay has no feedback"),
            Map.entry("output stuck low", "low just then; found when it is needed"),
            Map.entry("port delay", "within the time that 2.5 polls allow"),
            Map.entry("port loss", "a message in four may be lost within 2.5 polls"),
            Map.entry("port repetition", "the same order twice is the same order"),
            Map.entry("port wrong sequence", "an older answer is a true answer, and polls are alike"),
            Map.entry("probe drifts",
                    "where joint, cell and room are equally warm a probe may be off by as much as it is allowed to differ; the room's own probe is believed up to its channel's range"),
            Map.entry("probe falls off",
                    "judged only where the warmth to be expected over the room exceeds three times the probes' uncertainty"),
            Map.entry("protection never opens", "neither read nor set by the computer; only the step prove_protection finds it"),
            Map.entry("protection opens early", "its edge was not reached within the case, or the pack was at rest"),
            Map.entry("room jumps", "nothing is wrong with a warm or a cold room until a limit is reached"),
            Map.entry("shunt drifts",
                    "at rest there is nothing to compare; through a switched device nothing else measures the current; a programmable one must differ by 5 % and more"),
            Map.entry("shunt sense leads touch",
                    "without current 0 A is the truth; in the last minutes of a step the run ends as if the device had ended it"),
            Map.entry("sink takes more", "not at work just then"),
            Map.entry("source regulates high", "it meets its own ceiling only when the cells are nearly full"),
            Map.entry("source runs away", "not at work just then, or the cells are not yet near their ceiling"),
            Map.entry("tap reads off", "within what taps and pack may differ by"));

    private Blind() {}

    static String why(String kind) {
        return REASONS.getOrDefault(kind, "NO REASON KNOWN");
    }
}
