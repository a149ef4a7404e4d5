package rigwarden.emulated;

/** Where a chip sits on an SPI bus: at one of the controller's own selects, or at an output line of the board. */
final class SpiSeat implements LineSink {
    /** No select of the controller. */
    static final int BY_LINE = -1;

    final int select;
    SpiTarget chip;
    private final boolean activeHigh;
    private boolean active;

    private SpiSeat(SpiTarget chip, int select, boolean activeHigh) {
        this.chip = chip;
        this.select = select;
        this.activeHigh = activeHigh;
    }

    static SpiSeat atSelect(int select, SpiTarget chip) {
        return new SpiSeat(chip, select, false);
    }

    /** A line that nobody has claimed is held at its inactive level by a resistor. */
    static SpiSeat atLine(boolean activeHigh, SpiTarget chip) {
        return new SpiSeat(chip, BY_LINE, activeHigh);
    }

    boolean active() {
        return active;
    }

    @Override
    public void level(boolean high) {
        turn(high == activeHigh);
    }

    void turn(boolean nowActive) {
        if (active != nowActive) {
            active = nowActive;
            chip.selected(active);
        }
    }

    /** The same chip with a fault, under the same select, of which it knows how it stands. */
    void replace(SpiTarget faulty) {
        chip = faulty;
    }

    /** Stands as another seat does; its chip knows already. */
    void standLike(SpiSeat other) {
        active = other.active;
    }
}
