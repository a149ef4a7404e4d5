package rigwarden.rig;

/** How orders are said to an instrument: in words, or in registers. */
public sealed interface Speech permits Commands, RegisterMap {}
