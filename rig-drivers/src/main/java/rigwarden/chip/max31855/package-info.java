/** MAX31855, thermocouple converter without registers, which takes every couple for a straight line (19-5793). */
package rigwarden.chip.max31855;
