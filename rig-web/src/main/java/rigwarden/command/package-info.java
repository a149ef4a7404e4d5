/** The commands, and the one place where a rig is put together. */
package rigwarden.command;
