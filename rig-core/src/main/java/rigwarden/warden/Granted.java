package rigwarden.warden;

/** What the rig is told, and the guard for the next scan: a wish that must not be is itself a trip. */
public record Granted(Orders orders, Guard guard) {}
