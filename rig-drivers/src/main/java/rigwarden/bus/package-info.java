/** Narrow I2C and SPI buses over Pi4J: whole transactions, unsigned bytes, full length or a failure with a name. */
package rigwarden.bus;
