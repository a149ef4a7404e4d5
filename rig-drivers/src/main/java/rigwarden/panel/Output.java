package rigwarden.panel;

import rigwarden.rig.Panel;

/** Output lines, in the order in which they are let go. */
public enum Output {
    CONTACTOR,
    PRECHARGE,
    SOURCE_RELAY,
    SINK_RELAY,
    SOUNDER,
    HEARTBEAT;

    /** Line number of this output on the controller. */
    int line(Panel panel) {
        return switch (this) {
            case CONTACTOR -> panel.contactor();
            case PRECHARGE -> panel.precharge();
            case SOURCE_RELAY -> panel.sourceRelay();
            case SINK_RELAY -> panel.sinkRelay();
            case SOUNDER -> panel.sounder();
            case HEARTBEAT -> panel.heartbeat();
        };
    }
}
