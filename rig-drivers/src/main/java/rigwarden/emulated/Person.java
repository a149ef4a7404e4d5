package rigwarden.emulated;

import rigwarden.prove.Answer;
import rigwarden.prove.Prompt;

/** An emulated person beside an emulated rig: does what is asked, as fast as somebody who knows where things are. */
public final class Person {
    private static final double FINGER_C = 33;
    /** By which two fingers warm a bead through its insulation, s. */
    private static final double CONTACT_SECONDS = 3;
    private static final double REACH_SECONDS = 1;
    private static final double LET_GO_SECONDS = 0.4;
    private static final double WALK_SECONDS = 4;
    private static final double HAND_SECONDS = 2;
    private static final double PLUG_SECONDS = 10;

    private final EmulatedRig rig;
    private Prompt asked = new Prompt.Watch("");
    private long sinceNanos;
    private boolean done;
    private boolean holds;

    /** Somebody who has touched nothing yet. */
    public Person(EmulatedRig rig) {
        this.rig = rig;
    }

    /** Hears a prompt, and does what is due at this instant, monotonic nanoseconds; what is said with the next scan. */
    public Answer hears(Prompt prompt, long nanos) {
        if (!prompt.equals(asked)) {
            asked = prompt;
            sinceNanos = nanos;
            done = false;
        }
        double seconds = (nanos - sinceNanos) * 1e-9;
        if (holds && seconds >= LET_GO_SECONDS && !done) {
            rig.letGo();
            holds = false;
        }
        return done || seconds < takes(prompt) ? Answer.NONE : does(prompt);
    }

    private static double takes(Prompt prompt) {
        return switch (prompt) {
            case Prompt.Watch _ -> 0;
            case Prompt.Confirm _, Prompt.Release _, Prompt.Reset _ -> HAND_SECONDS;
            case Prompt.Warm _ -> REACH_SECONDS;
            case Prompt.Press _ -> WALK_SECONDS;
            case Prompt.Plug _ -> PLUG_SECONDS;
        };
    }

    /** Nothing in an emulated room is warmer or colder than the room, so that a probe which says so is wrong. */
    private Answer does(Prompt prompt) {
        done = true;
        return switch (prompt) {
            case Prompt.Watch _ -> Answer.NONE;
            case Prompt.Confirm _ -> Answer.SKIP;
            case Prompt.Warm warm -> {
                rig.touch(warm.probe(), FINGER_C, CONTACT_SECONDS);
                holds = true;
                yield Answer.NONE;
            }
            case Prompt.Press press -> {
                rig.openContact(press.contact());
                yield Answer.NONE;
            }
            case Prompt.Release _ -> {
                rig.closeContact();
                yield Answer.DONE;
            }
            case Prompt.Reset _ -> {
                rig.resetLoop();
                yield Answer.NONE;
            }
            case Prompt.Plug _ -> {
                rig.plugLinks();
                yield Answer.DONE;
            }
        };
    }
}
