package rigwarden.emulated;

/** The fault status of the MAX31856: what it compares, and how long a bit stays (sheet's registers MASK, CR0, SR; from memory). */
final class Max31856Faults {
    static final int OPEN = 1;
    static final int OVER_OR_UNDER = 1 << 1;
    private static final int HOT_LOW = 1 << 2;
    private static final int HOT_HIGH = 1 << 3;
    private static final int COLD_LOW = 1 << 4;
    private static final int COLD_HIGH = 1 << 5;
    private static final int HOT_RANGE = 1 << 6;
    private static final int COLD_RANGE = 1 << 7;
    /** What can pull the fault pin, and can be latched. */
    private static final int MASKABLE = 0x3F;
    private static final double COLDEST = -55;
    private static final double WARMEST = 125;
    private static final double HOT_LIMIT_STEP = 0.0625;

    private int status;

    Max31856Faults copy() {
        Max31856Faults copy = new Max31856Faults();
        copy.status = status;
        return copy;
    }

    void clear() {
        status = 0;
    }

    int status() {
        return status;
    }

    /** Whether the fault pin is pulled low. */
    boolean pulled(int mask) {
        return (status & ~mask & MASKABLE) != 0;
    }

    /** Interrupt mode only: what is still so comes back with the next conversion. */
    void acknowledge() {
        status &= ~MASKABLE;
    }

    /** The inputs are outside the supply, or again within it. */
    void strayed(boolean strays, boolean latched) {
        status = strays ? status | OVER_OR_UNDER : latched ? status : status & ~OVER_OR_UNDER;
    }

    /** The circuit was tested. */
    void tested(boolean open, boolean latched) {
        status = open ? status | OPEN : latched ? status : status & ~OPEN;
    }

    /** A conversion has ended. */
    void judge(double hot, double cold, Couple couple, int[] registers, boolean latched) {
        double hotHigh = (short) (registers[5] << 8 | registers[6]) * HOT_LIMIT_STEP;
        double hotLow = (short) (registers[7] << 8 | registers[8]) * HOT_LIMIT_STEP;
        int seen = (cold > (byte) registers[3] ? COLD_HIGH : 0)
                | (cold < (byte) registers[4] ? COLD_LOW : 0)
                | (hot > hotHigh ? HOT_HIGH : 0)
                | (hot < hotLow ? HOT_LOW : 0);
        int ranges = (cold < COLDEST || cold > WARMEST ? COLD_RANGE : 0)
                | (hot <= couple.lowestC || hot >= couple.highestC ? HOT_RANGE : 0);
        int kept = status & (latched ? MASKABLE : OPEN | OVER_OR_UNDER);
        status = kept | seen | ranges;
    }
}
