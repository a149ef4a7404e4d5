/** A narrow bus over Pi4J: whole transactions, unsigned values, full length or a named failure. */
package rigwarden.bus;
