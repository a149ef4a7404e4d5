package rigwarden.emulated;

/**
 * The MCP23017 port expander at register level (Microchip DS20001952C, register map; pointer, interrupts and pull-ups from memory
 * of it). After power-on and after every dip of its supply all pins are inputs. A read of GPIO shows the pins as they stand,
 * not what was written. Pins are 0 to 7 for port A, 8 to 15 for port B. Changes of inputs are noticed when the chip is looked
 * at, so that a pulse between two looks goes by. Not emulated: the later sheet's output-only GPA7 and GPB7, the address pins.
 */
public final class Mcp23017Emulator implements PoweredTarget {
    private static final int PINS = 16;
    private static final int PAIRS = 11;
    private static final int PORT_STEP = 0x10;
    private static final int BANKED = 1 << 7;
    private static final int STAYS = 1 << 5;
    private static final int NOT_THERE = -1;

    /** What is on the chip's pins. */
    public interface Wiring {
        /** What others do to a pin. */
        Outside outside(int pin);

        /** The level that the chip drives on a pin has changed, or whether it drives it at all. */
        void driven(int pin, boolean output, boolean high);
    }

    /** What something outside does to a pin. It is stronger than the chip: a short shows in GPIO. */
    public enum Outside {
        /** Nothing is there. */
        OPEN,
        /** Holds it low. */
        LOW,
        /** Holds it high. */
        HIGH,
        /** A resistor to ground, stronger than the chip's own pull-up. */
        PULLED_DOWN
    }

    private final Wiring wiring;
    private final Mcp23017Ports ports;
    private final boolean[] output = new boolean[PINS];
    private final boolean[] high = new boolean[PINS];
    private int pointer;

    /** A chip that has just been given its supply: sixteen inputs. */
    public Mcp23017Emulator(Wiring wiring) {
        this.wiring = wiring;
        ports = new Mcp23017Ports();
        ports.settle(pins());
    }

    private Mcp23017Emulator(Mcp23017Emulator other, Wiring wiring) {
        this.wiring = wiring;
        ports = other.ports.copy();
        System.arraycopy(other.output, 0, output, 0, PINS);
        System.arraycopy(other.high, 0, high, 0, PINS);
        pointer = other.pointer;
    }

    /** The same chip in the same state on other wires, which are not told what it drives already. */
    public Mcp23017Emulator copy(Wiring newWiring) {
        return new Mcp23017Emulator(this, newWiring);
    }

    @Override
    public void powerOnReset() {
        pointer = 0;
        ports.reset();
        drive();
        ports.settle(pins());
    }

    /** Level of an interrupt pin: 0 for INTA, 1 for INTB. */
    public boolean interruptPinHigh(int port) {
        ports.look(pins());
        return ports.interruptHigh(port);
    }

    @Override
    public int written(byte[] bytes, int offset, int length) {
        if (length == 0) {
            return 0;
        }
        ports.look(pins());
        int wanted = bytes[offset] & 0xFF;
        if (register(wanted) == NOT_THERE) {
            return -1;
        }
        pointer = wanted;
        for (int i = 1; i < length; i++) {
            int register = register(pointer);
            if (register == NOT_THERE) {
                return i;
            }
            ports.store(register, bytes[offset + i] & 0xFF);
            advance();
            drive();
            ports.look(pins());
        }
        return length;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        ports.look(pins());
        for (int i = 0; i < length; i++) {
            int register = register(pointer);
            if (register == NOT_THERE) {
                return i;
            }
            into[offset + i] = (byte) ports.value(register);
            advance();
        }
        return length;
    }

    /** Place of a register in the order IODIRA, IODIRB, IPOLA, …, whichever way they are addressed. */
    private int register(int address) {
        boolean banked = (ports.control() & BANKED) != 0;
        if (!banked) {
            return address < 2 * PAIRS ? address : NOT_THERE;
        }
        int pair = address % PORT_STEP;
        int port = address / PORT_STEP;
        return pair < PAIRS && port < 2 ? 2 * pair + port : NOT_THERE;
    }

    /** With SEQOP set the pointer stays; unbanked it then swings between the two ports of one register. */
    private void advance() {
        boolean banked = (ports.control() & BANKED) != 0;
        if ((ports.control() & STAYS) != 0) {
            pointer = banked ? pointer : pointer ^ 1;
            return;
        }
        pointer++;
        if (register(pointer) == NOT_THERE) {
            pointer = banked && pointer < PORT_STEP ? PORT_STEP : 0;
        }
    }

    private int pins() {
        int levels = 0;
        for (int pin = 0; pin < PINS; pin++) {
            boolean level = switch (wiring.outside(pin)) {
                case LOW -> false;
                case HIGH -> true;
                case OPEN -> ports.isOutput(pin) ? ports.latched(pin) : ports.pullsUp(pin);
                case PULLED_DOWN -> ports.isOutput(pin) && ports.latched(pin);
            };
            levels |= level ? 1 << pin : 0;
        }
        return levels;
    }

    private void drive() {
        for (int pin = 0; pin < PINS; pin++) {
            boolean nowOutput = ports.isOutput(pin);
            boolean nowHigh = nowOutput && ports.latched(pin);
            if (nowOutput != output[pin] || nowHigh != high[pin]) {
                output[pin] = nowOutput;
                high[pin] = nowHigh;
                wiring.driven(pin, nowOutput, nowHigh);
            }
        }
    }
}
