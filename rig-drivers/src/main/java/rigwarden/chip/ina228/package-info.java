/** Driver of the shunt monitor INA228 (data sheet SLYS021A). */
package rigwarden.chip.ina228;
