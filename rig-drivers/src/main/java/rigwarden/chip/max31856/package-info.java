/** MAX31856, thermocouple converter that linearises by itself and finds open probes (19-7534). */
package rigwarden.chip.max31856;
