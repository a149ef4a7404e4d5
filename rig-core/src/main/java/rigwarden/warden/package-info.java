/** Judges every scan, and alone grants energy. No clock, no thread, no database, nothing above it. */
package rigwarden.warden;
