/** What a hand meter finds on the joints of a path that carries current, and which of them is unlike its likes. */
package rigwarden.joint;
