/** The board, its chips and the serial instruments, emulated down to the register and the byte. */
package rigwarden.emulated;
