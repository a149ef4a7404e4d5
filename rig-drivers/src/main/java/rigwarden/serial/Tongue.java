package rigwarden.serial;

import rigwarden.rig.Commands;
import rigwarden.rig.Instrument;
import rigwarden.rig.RegisterMap;

/**
 * How one instrument is spoken to. An act is a chain of turns; the agent makes each of them, and nothing here waits,
 * reads or writes.
 */
interface Tongue {
    /** What an agent may want of an instrument. */
    enum Act {
        /** It is asked for its name. */
        NAME,
        /** Its own limit, and its own time-out where it has one, are set and read back. */
        LIMIT,
        /** It gets another set point. */
        SET,
        /** It gets a set point and is switched on. */
        ON,
        /** It is switched off. */
        OFF,
        /** It is asked what it does. */
        POLL
    }

    /** What comes next in an act. */
    enum Turn {
        /** The message goes out; nothing comes back. */
        SEND,
        /** The message goes out and is answered. */
        ASK,
        /** More bytes of the answer are needed. */
        LISTEN,
        /** The act is over and was obeyed. */
        DONE,
        /** The poll was answered, and the instrument complains of something before it. */
        COMPLAINED,
        /** The act is over; the instrument understood it and said no. */
        REFUSED,
        /** What came back is no answer to this. */
        WRONG
    }

    /** The language of an instrument; its own limit in V of a source, A of a sink. */
    static Tongue of(Instrument instrument, double limit) {
        return switch (instrument.speech()) {
            case Commands words -> new ScpiTongue(words, limit);
            case RegisterMap map -> new ModbusTongue(map, limit);
        };
    }

    /**
     * Begins an act; whatever was open is forgotten.
     *
     * @param volts set point, V; read in SET and ON only
     * @param amps set point, A; read in SET and ON only
     */
    Turn begin(Act act, double volts, double amps);

    /** The message of this turn. */
    byte[] bytes();

    /** Length of the message of this turn. */
    int length();

    /** A message that is not answered is on its way. */
    Turn sent();

    /** A byte has come back. */
    Turn take(byte next);

    /** Ends whatever the instrument may have heard half of; empty where silence does that. */
    byte[] fresh();

    /** Switches it off at any time, whatever is open, without looking at an answer. */
    byte[] off();

    /** Whether that may be sent while an answer is on its way; two may not speak at once on a shared pair of wires. */
    boolean overtakes();

    /** Volts of the last poll. */
    double volts();

    /** Amperes of the last poll, its own sign. */
    double amps();

    /** State of the last poll. */
    boolean on();

    /** What the instrument has complained of in this act, in its own words; empty when it has not. */
    String complaint();
}
