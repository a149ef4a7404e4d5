/** From a trace to values with uncertainty. The streaming form is the only form: a batch is a stream that has ended. */
package rigwarden.findings;
