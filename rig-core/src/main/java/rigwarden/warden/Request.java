package rigwarden.warden;

/** What an operator asks for. Each needs the arm input; STOP is not among them, it needs nothing. */
public enum Request {
    START,
    CLEAR
}
