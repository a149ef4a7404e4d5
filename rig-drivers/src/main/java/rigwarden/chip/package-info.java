/** What chips of one family share; each chip has a package of its own beneath. */
package rigwarden.chip;
