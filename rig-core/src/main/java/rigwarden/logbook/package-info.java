/** The logbook on SQLite: one ledger, and one file for every run that holds every scan. */
package rigwarden.logbook;
