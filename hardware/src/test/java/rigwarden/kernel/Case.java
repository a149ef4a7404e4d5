package rigwarden.kernel;

/**
 * One sentence of the contract.
 *
 * @param name the sentence
 * @param body shows it, or throws
 */
record Case(String name, Body body) {
    /** What shows it. */
    @FunctionalInterface
    interface Body {
        void run() throws Exception;
    }
}
