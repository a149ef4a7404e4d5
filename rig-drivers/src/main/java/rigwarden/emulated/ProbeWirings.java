package rigwarden.emulated;

import rigwarden.pack.Node;

/** One thermocouple as the chip at its end sees it, whichever chip that is. Every chip is as warm as the room. */
final class ProbeWirings {
    private final Wirings wirings;
    private final int bead;

    ProbeWirings(Wirings wirings, int bead) {
        this.wirings = wirings;
        this.bead = bead;
    }

    private double hot() {
        Defects defects = wirings.defects();
        double celsius = wirings.now().beadCelsius(defects.beadOf[bead]);
        double shown = defects.probeReversed[bead] ? 2 * cold() - celsius : celsius;
        return shown + defects.probeKelvin[bead];
    }

    private double cold() {
        return wirings.now().celsius(Node.ROOM);
    }

    private boolean isOpen() {
        return wirings.defects().probeOpen[bead];
    }

    private boolean isShorted() {
        return wirings.defects().probeShorted[bead];
    }

    /** Wires that touch, at the chip, are a couple whose tip is there. */
    private double emfMillivolts(Couple couple) {
        return isShorted() ? 0 : couple.millivolts(hot(), cold());
    }

    /** On an MCP9601, which gives degrees and knows of touching wires. */
    Mcp9601Emulator.Wiring mcp9601() {
        return new Mcp9601Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double hotCelsius() {
                return hot();
            }

            @Override
            public double coldCelsius() {
                return cold();
            }

            @Override
            public boolean open() {
                return isOpen();
            }

            @Override
            public boolean shorted() {
                return isShorted();
            }
        };
    }

    /** On a MAX31856: a couple of type T, insulated from what it sits on. */
    Max31856Emulator.Wiring max31856() {
        return new Max31856Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double emfMillivolts() {
                return ProbeWirings.this.emfMillivolts(Couple.T);
            }

            @Override
            public double coldCelsius() {
                return cold();
            }

            @Override
            public boolean open() {
                return isOpen();
            }

            @Override
            public boolean outsideSupply() {
                return false;
            }
        };
    }

    /** On a MAX31855: a couple of the chip's own letter, insulated from what it sits on. */
    Max31855Emulator.Wiring max31855(Couple couple) {
        return new Max31855Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double emfMillivolts() {
                return ProbeWirings.this.emfMillivolts(couple);
            }

            @Override
            public double coldCelsius() {
                return cold();
            }

            @Override
            public boolean open() {
                return isOpen();
            }

            @Override
            public boolean shortedToGround() {
                return false;
            }

            @Override
            public boolean shortedToSupply() {
                return false;
            }
        };
    }
}
