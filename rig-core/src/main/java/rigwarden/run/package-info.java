/** The run machine: verdict and scan in, next state, wish and events out. No clock, no thread, no database. */
package rigwarden.run;
