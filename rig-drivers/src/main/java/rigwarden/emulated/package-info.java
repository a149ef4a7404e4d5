/**
 * The wire and what hangs on it, emulated: a Pi4J provider that fails as the official plug-in fails, chips and instruments
 * with their own reading of the data sheets, all on the truth of {@code rigwarden.pack}. No constant of a driver is used.
 */
package rigwarden.emulated;
