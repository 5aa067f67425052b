/** The page, its server, the command line, and the program's entry point. Owns no state of the bench. */
package candlebench.web;
