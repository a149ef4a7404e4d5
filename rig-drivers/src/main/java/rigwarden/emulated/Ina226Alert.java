package rigwarden.emulated;

/** The Mask/Enable register of the INA226 and what hangs on it (TI SBOS547, section on the alert pin; from memory of it). */
final class Ina226Alert {
    private static final int SHUNT_OVER = 1 << 15;
    private static final int SHUNT_UNDER = 1 << 14;
    private static final int BUS_OVER = 1 << 13;
    private static final int BUS_UNDER = 1 << 12;
    private static final int POWER_OVER = 1 << 11;
    private static final int TELLS_READY = 1 << 10;
    private static final int ALERTED = 1 << 4;
    private static final int READY = 1 << 3;
    private static final int OVERFLOW = 1 << 2;
    private static final int ACTIVE_HIGH = 1 << 1;
    private static final int LATCHES = 1;
    private static final int SETTINGS =
            SHUNT_OVER | SHUNT_UNDER | BUS_OVER | BUS_UNDER | POWER_OVER | TELLS_READY | ACTIVE_HIGH | LATCHES;

    int limit;
    private int settings;
    private int flags;

    Ina226Alert copy() {
        Ina226Alert copy = new Ina226Alert();
        copy.limit = limit;
        copy.settings = settings;
        copy.flags = flags;
        return copy;
    }

    void reset() {
        limit = 0;
        settings = 0;
        flags = 0;
    }

    void write(int word) {
        settings = word & SETTINGS;
    }

    /** Reading takes the ready flag away, and a latched alert with it. */
    int read() {
        int word = settings | flags;
        flags &= ~(READY | ((settings & LATCHES) != 0 ? ALERTED : 0));
        return word;
    }

    void unready() {
        flags &= ~READY;
    }

    /** Level of the alert pin, which is pulled up and open-drain. */
    boolean pinHigh() {
        boolean active = (flags & ALERTED) != 0 || (settings & TELLS_READY) != 0 && (flags & READY) != 0;
        return active == ((settings & ACTIVE_HIGH) != 0);
    }

    /** A cycle has ended. The highest of the enabled comparisons is the one that is made. */
    void judge(int shuntCode, int busCode, long powerCode, boolean overflow) {
        flags = flags & ~OVERFLOW | READY | (overflow ? OVERFLOW : 0);
        boolean beyond = switch (Integer.highestOneBit(settings & (SHUNT_OVER | SHUNT_UNDER | BUS_OVER | BUS_UNDER | POWER_OVER))) {
            case SHUNT_OVER -> shuntCode > (short) limit;
            case SHUNT_UNDER -> shuntCode < (short) limit;
            case BUS_OVER -> busCode > limit;
            case BUS_UNDER -> busCode < limit;
            case POWER_OVER -> powerCode > limit;
            default -> false;
        };
        if (beyond) {
            flags |= ALERTED;
        } else if ((settings & LATCHES) == 0) {
            flags &= ~ALERTED;
        }
    }
}
