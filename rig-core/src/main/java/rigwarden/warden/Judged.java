package rigwarden.warden;

/** A guard for the next scan, and the verdict on this one. */
public record Judged(Guard guard, Verdict verdict) {}
