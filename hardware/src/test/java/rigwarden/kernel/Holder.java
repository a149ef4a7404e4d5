package rigwarden.kernel;

import com.pi4j.context.Context;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import rigwarden.bus.RealBoard;
import rigwarden.panel.Output;
import rigwarden.panel.Outputs;

/** A process that has a rig running, as the kernel sees it: bus and lines claimed, the contactor closed, a beat every 50 ms. */
final class Holder {
    static final String READY = "holding";
    private static final long BEAT_MILLIS = 50;

    private Holder() {}

    public static void main(String[] arguments) throws Exception {
        Context context = RealBoard.open(List.of("i2c-" + Header.BUS), Path.of("/dev"), OptionalInt.of(0));
        Outputs outputs = Outputs.claim(context, ContractRig.RIG);
        outputs.set(Output.CONTACTOR, true);
        System.out.println(READY);
        while (true) {
            outputs.toggleHeartbeat();
            Thread.sleep(BEAT_MILLIS);
        }
    }
}
