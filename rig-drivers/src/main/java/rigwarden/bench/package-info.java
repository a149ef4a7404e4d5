/** The bench: every driver of one rig put together behind the loop's port. */
package rigwarden.bench;
