package rigwarden.serial;

import java.util.concurrent.locks.LockSupport;
import java.util.function.Consumer;
import rigwarden.loop.Clock;

/** The runner of one agent when the rig is live. */
public final class AgentThread implements AutoCloseable {
    private static final long IDLE_NANOS = 2_000_000;
    private static final long JOIN_MILLIS = 1000;

    private final InstrumentAgent agent;
    private final Clock clock;
    private final Thread thread;
    private final Consumer<Said> told;
    private volatile boolean ending;

    private AgentThread(InstrumentAgent agent, Clock clock, String name, Consumer<Said> told) {
        this.told = told;
        this.agent = agent;
        this.clock = clock;
        thread = Thread.ofPlatform().daemon().name(name).unstarted(this::run);
    }

    /**
     * Starts a runner.
     *
     * @param name role of the thread, for example "source"
     * @param told takes each complaint of the instrument, on the runner's thread; must not wait
     */
    public static AgentThread start(InstrumentAgent agent, Clock clock, String name, Consumer<Said> told) {
        AgentThread runner = new AgentThread(agent, clock, name, told);
        runner.thread.start();
        return runner;
    }

    private void run() {
        try {
            while (!ending) {
                agent.step(clock.nanos());
                agent.said().ifPresent(told);
                if (!agent.listening()) {
                    LockSupport.parkNanos(IDLE_NANOS);
                }
            }
        } finally {
            agent.close();
        }
    }

    /** Orders Off, ends the thread and closes the port; waits a second at most. */
    @Override
    public void close() {
        agent.order(Order.OFF);
        ending = true;
        try {
            thread.join(JOIN_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
