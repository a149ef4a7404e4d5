/** Tells people elsewhere what happened: what is worth telling, and the ways on which it goes, each with a thread of its own. */
package rigwarden.notice;
