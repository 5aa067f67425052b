package candlebench.web;

import candlebench.station.Bench;
import candlebench.station.batch.Product;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * What the page's server shows and offers.
 *
 * @param nanos the clock that the bench's views are stamped with
 * @param products what can be started
 * @param search the search for a scale, where what it finds can be used
 * @param book the record to look things up in, where this station has one
 * @param hands what a person practises with, on the practice bench only
 */
record Site(
    Bench bench,
    LongSupplier nanos,
    List<? extends Product> products,
    Optional<ScaleSearch> search,
    Optional<RecordBook> book,
    Optional<Hands> hands) {

  /** Hands at a pan that does not exist. */
  interface Hands {

    /** Begins a move or, for one that is held, ends it; throws {@link IllegalArgumentException} where there is no such move. */
    void move(String hand, boolean down);
  }
}
