/** MCP23017, sixteen lines on an I2C bus (Microchip DS20001952C). */
package rigwarden.chip.mcp23017;
