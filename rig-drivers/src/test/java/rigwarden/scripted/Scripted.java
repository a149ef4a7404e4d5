package rigwarden.scripted;

import com.pi4j.Pi4J;
import com.pi4j.context.Context;

/** A Pi4J context whose devices are a {@link Wire}. */
public final class Scripted {
    private Scripted() {}

    public static Context context(Wire wire) {
        return Pi4J.newContextBuilder()
                .noAutoDetect()
                .disableShutdownHook()
                .add(new ScriptedI2c(wire), new ScriptedSpi(wire), new ScriptedLines.Outputs(wire), new ScriptedLines.Inputs(wire))
                .build();
    }
}
