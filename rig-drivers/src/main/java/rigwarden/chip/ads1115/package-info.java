/** Driver of the analogue-to-digital converter ADS1115 (data sheet SBAS444E). */
package rigwarden.chip.ads1115;
