/**
 * The record on disk. {@code SqliteJournal} adds entries and changes none; {@code EntryJson} writes guidance's events as entries and reads
 * them back; {@code Chain} binds each to the one before it and {@code JournalAudit} shows where one was touched. {@code Projections}, in a
 * file that may be thrown away, finds batches and lots fast.
 */
package candlebench.station.journal;
