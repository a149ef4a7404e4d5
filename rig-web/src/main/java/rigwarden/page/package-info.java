/** The page: plain HTML from snapshots, one event stream, and a STOP that waits behind nothing. It never talks to a chip. */
package rigwarden.page;
