package candlebench.station.record;

import candlebench.shared.Mass;
import candlebench.station.guidance.GuidanceEvent.Correctable;
import candlebench.station.guidance.GuidanceEvent.Corrected;
import java.util.ArrayList;
import java.util.List;

/**
 * How much of one weighing came from one lot.
 *
 * @param lot empty where none was named
 */
public record LotShare(String lot, Mass amount) {

  /** A lot that was changed for the next while so much was in. */
  record Until(String lot, Mass poured) {}

  /** The shares of a weighing whose lot was changed on the way, in order; the last lot gives what is left. */
  static List<LotShare> of(List<Until> changes, String last, Mass net) {
    List<LotShare> shares = new ArrayList<>();
    Mass before = Mass.ZERO;
    for (Until change : changes) {
      Mass until = change.poured().isMoreThan(net) ? net : change.poured();
      if (until.isMoreThan(before)) {
        shares.add(new LotShare(change.lot(), until.minus(before)));
        before = until;
      }
    }
    if (shares.isEmpty() || net.isMoreThan(before))
      shares.add(new LotShare(last, net.minus(before)));
    return List.copyOf(shares);
  }

  /** The same with a correction of this weighing's lot: of the share it names or, where it names none, of all. */
  static List<LotShare> corrected(List<LotShare> shares, Corrected correction) {
    if (correction.what() != Correctable.LOT) return shares;
    boolean named = shares.stream().anyMatch(share -> share.lot().equals(correction.was()));
    return named
        ? misread(shares, correction)
        : shares.stream()
            .map(share -> new LotShare(correction.now(), share.amount()))
            .toList();
  }

  /** The same with every share of a lot that was misread put right. */
  static List<LotShare> misread(List<LotShare> shares, Corrected correction) {
    if (correction.what() != Correctable.LOT) return shares;
    return shares.stream()
        .map(share -> share.lot().equals(correction.was())
            ? new LotShare(correction.now(), share.amount())
            : share)
        .toList();
  }
}
