/** ADS1115, 16 bit converter with four inputs (Texas Instruments SBAS444E). */
package rigwarden.chip.ads1115;
