/** INA228, current and voltage monitor with charge accumulator (Texas Instruments SLYS021A). */
package rigwarden.chip.ina228;
