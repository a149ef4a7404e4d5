package rigwarden.bench;

import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.serial.Heard;
import rigwarden.serial.InstrumentAgent;

/** The three channels of one instrument. Its readings carry the time at which it was asked. */
final class Answers {
    private final InstrumentAgent agent;
    private final Table table;
    private final Channel volts;
    private final Channel amps;
    private final Channel on;

    Answers(InstrumentAgent agent, Rig rig, String device, Table table) {
        this.agent = agent;
        this.table = table;
        volts = rig.column(device + "_v").orElseThrow();
        amps = rig.column(device + "_a").orElseThrow();
        on = rig.column(device + "_on").orElseThrow();
    }

    void read() {
        switch (agent.heard()) {
            case Heard.Answer answer -> {
                table.value(volts, answer.volts(), answer.takenNanos());
                table.value(amps, answer.amps(), answer.takenNanos());
                table.value(on, answer.on() ? 1 : 0, answer.takenNanos());
            }
            case Heard.Silent silent -> {
                table.silent(volts, silent.why());
                table.silent(amps, silent.why());
                table.silent(on, silent.why());
            }
        }
    }
}
