package rigwarden.campaign;

import rigwarden.program.Program;
import rigwarden.rig.Rig;

/**
 * A rig and what is run on it.
 *
 * @param name short, for tables
 */
public record Scene(String name, Rig rig, Program program) {}
