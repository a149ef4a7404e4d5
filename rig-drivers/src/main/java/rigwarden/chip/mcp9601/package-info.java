/** MCP9601, thermocouple converter that finds open and shorted probes (Microchip DS20005426F). */
package rigwarden.chip.mcp9601;
