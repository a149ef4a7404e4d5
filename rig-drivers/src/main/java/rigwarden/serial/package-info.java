/** Source and sink over a serial line: SCPI-1999 commands, one agent for each port. */
package rigwarden.serial;
