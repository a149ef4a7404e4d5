/** A narrow I2C bus over Pi4J: whole transactions, unsigned bytes, full length or a failure with a name. */
package rigwarden.bus;
