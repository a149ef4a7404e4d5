/** The rig's hardware behind the loop's port: one scan in, one set of orders out. */
package rigwarden.bench;
