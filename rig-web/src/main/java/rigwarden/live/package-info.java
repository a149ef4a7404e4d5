/** What can be seen of a run while it goes on: snapshots, a thinned history, and the desk where people's wishes lie. */
package rigwarden.live;
