/** Rig files and programmes: TOML text to a checked rig or programme, or every refusal that was found. */
package rigwarden.rigfile;
