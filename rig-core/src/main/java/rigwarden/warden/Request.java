package rigwarden.warden;

/** What an operator asks for. Each needs the arm input; STOP is not among them, it needs nothing. */
public enum Request {
    START,
    /** A start of a programme that recovers cells below the usual limits; a person stands by. */
    RECOVER,
    /** That a run goes on which a crash, a power cut or a trip broke off. */
    CONTINUE,
    CLEAR
}
