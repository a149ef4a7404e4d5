package rigwarden.bench;

import rigwarden.serial.InstrumentAgent;

/**
 * The agents of source and sink.
 *
 * @param stepped true in a rehearsal, where each scan steps them; false when threads do
 */
public record Agents(InstrumentAgent source, InstrumentAgent sink, boolean stepped) {
    void step(long nanos) {
        if (stepped) {
            source.step(nanos);
            sink.step(nanos);
        }
    }
}
