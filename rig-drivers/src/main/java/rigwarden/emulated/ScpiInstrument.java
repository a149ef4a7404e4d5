package rigwarden.emulated;

/**
 * A programmable source or sink that speaks IEEE 488.2 and a part of SCPI-1999.0: bytes in, bytes out, a line feed ends
 * a message. It keeps doing what it was last told for as long as nothing else comes, which is what makes a lost link
 * dangerous. A command error ends its message; an execution error does not.
 */
public final class ScpiInstrument implements FarEnd {
    private static final double PROTECTION_MARGIN = 1.1;

    /**
     * How this specimen measures.
     *
     * @param gainVolts relative error of the volts shown
     * @param offsetVolts added to the volts shown
     * @param gainAmps relative error of the amperes shown
     * @param offsetAmps added to the amperes shown
     */
    public record Errors(double gainVolts, double offsetVolts, double gainAmps, double offsetAmps) {
        /** A specimen without any error. */
        public static final Errors NONE = new Errors(0, 0, 0, 0);
    }

    /**
     * The highest settings that are accepted.
     *
     * @param volts above 0
     * @param amps above 0
     */
    public record Ratings(double volts, double amps) {}

    private final ScpiNode root;
    private final String identity;
    private final Terminals terminals;
    private final Errors errors;
    private final Ratings ratings;
    final ScpiStatus status;
    final ScpiAnswer answer;
    private final ScpiParser parser;
    private boolean on;
    private double volts;
    private double amps;
    /** Own limit: volts of a source, amperes of a sink. */
    private double protection;
    private final double protectionMost;
    private final boolean guardsVolts;
    private boolean deaf;
    private boolean protectedItself;

    private ScpiInstrument(
            ScpiNode root, String identity, Terminals terminals, Errors errors, Ratings ratings, ScpiStatus status,
            ScpiAnswer answer, double protectionMost, boolean guardsVolts) {
        this.root = root;
        this.identity = identity;
        this.terminals = terminals;
        this.errors = errors;
        this.ratings = ratings;
        this.status = status;
        this.answer = answer;
        parser = new ScpiParser(this);
        this.protectionMost = protectionMost;
        this.guardsVolts = guardsVolts;
        protection = protectionMost;
    }

    /** A source that has just been switched on: output off, settings 0. */
    public static ScpiInstrument source(Terminals terminals, Errors errors, Ratings ratings) {
        return new ScpiInstrument(ScpiNode.source(), "EMULATED,SOURCE,0,0", terminals, errors, ratings,
                new ScpiStatus(), new ScpiAnswer(), ratings.volts() * PROTECTION_MARGIN, true);
    }

    /** A sink that has just been switched on: input off, setting 0. */
    public static ScpiInstrument sink(Terminals terminals, Errors errors, Ratings ratings) {
        return new ScpiInstrument(ScpiNode.sink(), "EMULATED,SINK,0,0", terminals, errors, ratings,
                new ScpiStatus(), new ScpiAnswer(), ratings.amps() * PROTECTION_MARGIN, false);
    }

    /**
     * The same instrument in the same state, half-received messages included, on other terminals; they are told
     * nothing.
     */
    public ScpiInstrument copy(Terminals newTerminals) {
        ScpiInstrument copy = new ScpiInstrument(
                root, identity, newTerminals, errors, ratings, status.copy(), answer.copy(), protectionMost, guardsVolts);
        copy.parser.continueFrom(parser);
        copy.on = on;
        copy.volts = volts;
        copy.amps = amps;
        copy.protection = protection;
        copy.deaf = deaf;
        copy.protectedItself = protectedItself;
        return copy;
    }

    /** Takes bytes from the link and carries out each message that they complete. */
    @Override
    public void receive(byte[] bytes, int length) {
        parser.receive(bytes, length);
    }

    /** Bytes of answers that wait to be taken. */
    @Override
    public int pending() {
        return answer.pending();
    }

    /** Hands over answers, as many as there is room for. */
    @Override
    public int take(byte[] into) {
        return answer.take(into);
    }

    /** Switches off when its own protection sees too much, volts at a source, amperes at a sink; the world's to call. */
    @Override
    public void protect() {
        double seen = guardsVolts ? terminals.volts() : terminals.amps();
        if (on && seen > protection) {
            on = false;
            protectedItself = true;
            status.fail(-240);
            order();
        }
    }

    /** A line feed ends a message, silence does not. */
    @Override
    public void still() {}

    @Override
    public void cut(int keep) {
        answer.cut(keep);
    }

    @Override
    public ScpiInstrument copy(Terminals newTerminals, VirtualClock clock) {
        return copy(newTerminals);
    }

    @Override
    public boolean protectedItself() {
        return protectedItself;
    }

    @Override
    public void deaf(boolean newDeaf) {
        deaf = newDeaf;
    }

    ScpiNode root() {
        return root;
    }

    void ask(ScpiCommand command) {
        switch (command) {
            case BRANCH -> status.fail(-113);
            case ERROR -> {
                int number = status.next();
                answer.part().whole(number).put(',').put('"').text(ScpiStatus.text(number)).put('"');
            }
            case VERSION -> answer.part().text("1999.0");
            case VOLTS -> answer.part().number(volts);
            case AMPS -> answer.part().number(amps);
            case PROTECTION -> answer.part().number(protection);
            case SWITCH -> answer.part().whole(on ? 1 : 0);
            case MEASURED_VOLTS ->
                answer.part().number(terminals.volts() * (1 + errors.gainVolts()) + errors.offsetVolts());
            case MEASURED_AMPS ->
                answer.part().number(terminals.amps() * (1 + errors.gainAmps()) + errors.offsetAmps());
        }
    }

    void identify() {
        answer.part().text(identity);
    }

    /** Carries out an order whose number has been read; the switch takes any number but 0 for on. */
    void obey(ScpiCommand command, double number) {
        double highest = switch (command) {
            case VOLTS -> ratings.volts();
            case AMPS -> ratings.amps();
            case PROTECTION -> protectionMost;
            case SWITCH, BRANCH, ERROR, VERSION, MEASURED_VOLTS, MEASURED_AMPS -> Double.MAX_VALUE;
        };
        if (command != ScpiCommand.SWITCH && (number < 0 || number > highest)) {
            status.fail(-222);
            return;
        }
        if (deaf) {
            return;
        }
        switch (command) {
            case VOLTS -> volts = number;
            case AMPS -> amps = number;
            case PROTECTION -> protection = number;
            case SWITCH -> on = Math.rint(number) != 0;
            case BRANCH, ERROR, VERSION, MEASURED_VOLTS, MEASURED_AMPS -> throw new IllegalStateException(
                    command + " is no order");
        }
        order();
    }

    double highest(ScpiCommand command) {
        return command == ScpiCommand.AMPS ? ratings.amps()
                : command == ScpiCommand.VOLTS ? ratings.volts() : protectionMost;
    }

    void resetSettings() {
        if (deaf) {
            return;
        }
        on = false;
        volts = 0;
        amps = 0;
        protection = protectionMost;
        order();
    }

    private void order() {
        terminals.order(on, volts, amps);
    }
}
