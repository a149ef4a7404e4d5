/** What is wired to what: parts, channels, ratings, and the envelope that nobody may widen. */
package rigwarden.rig;
