package candlebench.station.journal;

import candlebench.station.record.LotUse;

/** A lot in a batch: which, how much, and the vessels that hold it. */
public record LotHit(BatchRow batch, LotUse use) {}
