package rigwarden.emulated;

/** A port with which nothing is wrong. */
record StraightPort(FarEnd instrument) implements Port {
    @Override
    public void send(byte[] bytes, int length) {
        instrument.receive(bytes, length);
        instrument.still();
    }

    @Override
    public int pending() {
        return instrument.pending();
    }

    @Override
    public int take(byte[] into) {
        return instrument.take(into);
    }

    @Override
    public Port onto(Port base, VirtualClock clock) {
        return base;
    }
}
