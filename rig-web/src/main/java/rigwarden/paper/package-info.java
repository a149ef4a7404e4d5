/** What leaves the program on paper or in files: exports, later reports and drawings. */
package rigwarden.paper;
