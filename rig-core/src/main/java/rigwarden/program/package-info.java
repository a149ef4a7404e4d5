/** The list of steps of a test. */
package rigwarden.program;
