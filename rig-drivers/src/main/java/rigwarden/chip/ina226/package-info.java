/** INA226, current and voltage monitor without an accumulator (Texas Instruments SBOS547). */
package rigwarden.chip.ina226;
