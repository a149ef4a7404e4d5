/** GPIO lines of the rig: orders out, states in. */
package rigwarden.panel;
