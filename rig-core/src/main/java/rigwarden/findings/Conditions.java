package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import rigwarden.program.Ended;

/** The conditions of a step in words: a number is worth nothing without them. */
final class Conditions {
    private Conditions() {}

    static List<String> of(StepNotes step) {
        StepFinding sums = step.sums();
        List<String> words = new ArrayList<>();
        if (sums.seconds() > 0 && Math.abs(sums.chargeAmpHours().value()) > 0.01) {
            words.add(Words.say("current %s mean, %s after a minute, %s at the end", Words.amps(sums.meanAmps()),
                    Words.amps(sums.startAmps()), Words.amps(step.knees().endAmps())));
        }
        words.add(Double.isNaN(sums.meanBodyCelsius()) ? "nobody knows how warm the cells were"
                : Words.say("cells %.1f °C mean", sums.meanBodyCelsius()));
        if (!Double.isNaN(step.meanRoomCelsius())) {
            words.add(Words.say("room %.1f °C mean", step.meanRoomCelsius()));
        }
        for (Break broken : sums.breaks()) {
            words.add(Words.say("INTERRUPTED for %.1f min at %.2f A, with %.2f h of it still to come", broken.outageSeconds() / 60, broken.amps(),
                    broken.afterSeconds() / 3600));
        }
        words.add(ended(sums.by()));
        return words;
    }

    /** What ended a step, for example "ended by cut off". */
    static String ended(Ended by) {
        return by == Ended.CUT ? "broken off, by a crash or a power cut" : "ended by " + by.word().replace('_', ' ');
    }
}
