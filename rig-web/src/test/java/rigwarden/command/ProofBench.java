package rigwarden.command;

import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Person;
import rigwarden.loop.Bench;
import rigwarden.prove.Answer;
import rigwarden.prove.Proof;
import rigwarden.prove.Prompt;
import rigwarden.prove.Turn;
import rigwarden.rig.Rig;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/**
 * An emulated bench with somebody beside it who does what a proof asks for and types the answers. What is asked it learns
 * from a proof of its own that sees the same scans and hears the same answers.
 */
final class ProofBench implements Bench {
    /** No proof of one cell takes longer. */
    private static final long MOST_SCANS = 20_000;

    private final EmulatedRig emulated;
    private final Person person;
    private final Proof twin;
    private final Answers answers = new Answers();
    private Prompt prompt = new Prompt.Watch("");
    private boolean atRest = true;
    private long scans;
    private long clearScans;
    private Runnable atScan = () -> { };

    ProofBench(Rig rig, EmulatedRig emulated) {
        this.emulated = emulated;
        person = new Person(emulated);
        twin = new Proof(rig);
    }

    Answers answers() {
        return answers;
    }

    /** Does this before each scan. */
    void atScan(Runnable work) {
        atScan = work;
    }

    long scans() {
        return scans;
    }

    /** Scans since nothing more is asked of what lies at rest; 1 in the first of them. */
    long clearScans() {
        return clearScans;
    }

    @Override
    public Scan take() {
        scans++;
        if (scans > MOST_SCANS) {
            throw new IllegalStateException("the proof never ends");
        }
        emulated.catchUp();
        Answer said = atRest ? person.hears(prompt, emulated.clock().nanos()) : Answer.NONE;
        if (said != Answer.NONE) {
            answers.heard(said == Answer.DONE ? "" : "skip");
        }
        clearScans += atRest ? 0 : 1;
        atScan.run();
        Scan scan = emulated.rigBench().take();
        if (atRest) {
            Turn turn = twin.take(scan, said);
            prompt = turn.prompt();
            atRest = !turn.over();
            if (turn.over()) {
                emulated.letGo();
            }
        }
        return scan;
    }

    @Override
    public boolean apply(Orders orders) {
        return emulated.rigBench().apply(orders);
    }

    @Override
    public void beat(Lease lease) {
        emulated.rigBench().beat(lease);
    }
}
