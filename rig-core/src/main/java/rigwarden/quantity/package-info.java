/** Quantities, their units, and values with uncertainty. Depends on nothing of ours. */
package rigwarden.quantity;
