/** The bench: recipe and batch arithmetic, guidance, journal, links, and the one loop that owns all state. */
package candlebench.station;
