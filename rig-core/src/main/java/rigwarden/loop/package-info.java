/** The one cycle, and the three ports that it needs. */
package rigwarden.loop;
