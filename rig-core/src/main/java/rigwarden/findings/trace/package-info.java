/**
 * Takes a run row by row and keeps of each step what the findings need, bounded however long the step was. Late rows are
 * put in their place, rows that come twice are taken once, so that any way of feeding gives the same.
 */
package rigwarden.findings.trace;
