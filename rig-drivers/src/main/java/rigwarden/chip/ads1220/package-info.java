/** ADS1220, 24 bit converter with four inputs and a line that says ready (Texas Instruments SBAS501C). */
package rigwarden.chip.ads1220;
