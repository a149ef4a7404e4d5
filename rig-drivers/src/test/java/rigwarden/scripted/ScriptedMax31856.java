package rigwarden.scripted;

import java.util.Arrays;
import java.util.function.UnaryOperator;

/** Sixteen registers behind the address byte, with what a test wants of the order to convert. */
public final class ScriptedMax31856 implements UnaryOperator<byte[]> {
    public final byte[] registers = new byte[16];
    /** Writes that are lost from now on. */
    public int deaf;

    public ScriptedMax31856() {
        brownOut();
    }

    /** Registers as after power-up. */
    public void brownOut() {
        Arrays.fill(registers, (byte) 0);
        byte[] reset = {0, 3, (byte) 0xFF, 0x7F, (byte) 0xC0, 0x7F, (byte) 0xFF, (byte) 0x80};
        System.arraycopy(reset, 0, registers, 0, reset.length);
    }

    /** Ends the conversion that runs. */
    public void done(int high, int middle, int low, int status) {
        registers[0] &= (byte) ~0x40;
        registers[12] = (byte) high;
        registers[13] = (byte) middle;
        registers[14] = (byte) low;
        registers[15] = (byte) status;
    }

    /** Whether an order to convert arrived and was not carried out yet. */
    public boolean converts() {
        return (registers[0] & 0x40) != 0;
    }

    @Override
    public byte[] apply(byte[] sent) {
        byte[] answer = new byte[sent.length];
        int address = sent[0] & 0x7F;
        boolean lost = sent[0] < 0 && deaf-- > 0;
        for (int i = 1; i < sent.length && !lost; i++) {
            if (sent[0] < 0) {
                registers[address + i - 1] = sent[i];
            } else {
                answer[i] = registers[address + i - 1];
            }
        }
        return answer;
    }
}
