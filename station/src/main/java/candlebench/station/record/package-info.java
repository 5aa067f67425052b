/**
 * What the record says once it is written: the sheet of a batch, its net content, its label, and which lot went where. Pure folds of
 * what the journal holds; nothing here changes it.
 */
package candlebench.station.record;
