package candlebench.station.batch;

/**
 * What one pot takes of a batch that is too much for one: so many vessels, and how they are made from it.
 *
 * @param pot its name, as the bench knows it
 */
public record PotShare(String pot, int vessels, Recipe recipe) {

  public PotShare {
    if (vessels < 1) throw new IllegalArgumentException("a pot serves at least one vessel: " + pot);
  }
}
