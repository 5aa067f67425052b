/** Recipe and batch arithmetic: exact, and pure. Masses in whole picograms, shares as exact fractions, rounded once where they become a mass. */
package candlebench.station.batch;
