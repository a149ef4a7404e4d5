/** What each check stands on: marks on tests, and the one table of them that the build prints. */
package rigwarden.marks;
