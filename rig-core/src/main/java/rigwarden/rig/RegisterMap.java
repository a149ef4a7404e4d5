package rigwarden.rig;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where the numbers of an instrument lie that speaks Modbus RTU.
 *
 * @param station its address on the line, 1 to 247
 * @param parity of each character; without parity there are two stop bits (MODBUS over Serial Line V1.02, 2.5.1)
 * @param volts read: at its terminals, V
 * @param amps read: through them, A, its own sign
 * @param on read: 1 when it is switched on, 0 when not
 * @param setVolts written: voltage of a source, V; a sink has none
 * @param setAmps written: current, A
 * @param power written: 1 switches it on, 0 off
 * @param limit written: its own limit, V of a source, A of a sink
 * @param limitBack read: that limit
 * @param link what makes it switch off when nobody speaks to it any more; not every instrument has such a thing
 */
public record RegisterMap(
        int station,
        Parity parity,
        Register volts,
        Register amps,
        Register on,
        Optional<Register> setVolts,
        Register setAmps,
        Register power,
        Register limit,
        Register limitBack,
        Optional<LinkTime> link)
        implements Speech {

    /** What guards a character. */
    public enum Parity {
        EVEN,
        ODD,
        NONE
    }

    /**
     * The time after which an instrument switches off when it hears nothing.
     *
     * @param time written: that time, s
     * @param back read: that time
     * @param seconds what is written
     */
    public record LinkTime(Register time, Register back, double seconds) {}

    /** What is read in each poll: volts, amperes, whether on. */
    public List<Register> polled() {
        return List.of(volts, amps, on);
    }

    /** Everything that is written. */
    public List<Register> written() {
        return Stream.of(setVolts, Optional.of(setAmps), Optional.of(power), Optional.of(limit), link.map(LinkTime::time))
                .flatMap(Optional::stream).toList();
    }
}
