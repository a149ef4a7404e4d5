/** The numerical kit of the findings: straight lines, curves, propagation of uncertainty, thermocouples. Knows no rig. */
package rigwarden.findings.number;
