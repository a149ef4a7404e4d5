/** Instruments on serial lines: the port, the agent that speaks to one, and total parsers. */
package rigwarden.serial;
