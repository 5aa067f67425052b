/**
 * Planning a batch before any wax is melted: what goes into which pot, on which scale, and what speaks against it. Pure and exact;
 * only the uncertainty of a load is an estimate.
 */
package candlebench.station.batch.planning;
