/** Driver of the thermocouple converter MCP9601 (data sheet DS20005426). */
package rigwarden.chip.mcp9601;
