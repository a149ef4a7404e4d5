/** Logs that somebody else wrote: a map names and scales the columns of a plain CSV, and its lines become rows that the findings read. */
package rigwarden.elsewhere;
