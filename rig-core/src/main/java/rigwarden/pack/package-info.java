/** The electro-thermal truth under a rehearsal: cells, power path, warmth. Knows only quantities. */
package rigwarden.pack;
