package candlebench.web;

import candlebench.shared.Mass;
import candlebench.station.batch.HarbourLane;
import candlebench.station.batch.Product;
import candlebench.station.batch.planning.Fill;
import candlebench.station.batch.planning.PlannedProduct;
import candlebench.station.batch.planning.Pot;
import candlebench.station.guidance.BenchSetup;
import candlebench.web.Main.WrongUse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What a bench can make and the pots that its files name: from plan files, or where there is none the invented ones of the Harbour Lane
 * Workshop, so that a new bench can be tried.
 */
record Products(List<? extends Product> all, List<BenchSetup.Pot> pots) {
  private static final String FOLDER = "recipes";

  /** Those of the files named; where none is, of every {@code .json} in the folder {@code recipes} of the data folder. */
  static Products of(List<Path> named, Path data) throws WrongUse {
    List<Path> files = named.isEmpty() ? kept(data.resolve(FOLDER)) : named;
    if (files.isEmpty()) return new Products(HarbourLane.all(), List.of());
    Map<String, PlannedProduct> products = new LinkedHashMap<>();
    Map<String, BenchSetup.Pot> pots = new LinkedHashMap<>();
    for (Path file : files) {
      PlannedProduct product = new PlannedProduct(PlanFile.read(file));
      if (products.put(product.id(), product) != null)
        throw new WrongUse("'" + file + "': another file has the recipe '" + product.id()
            + "' too. Give it an id of its own, or take one file away");
      for (Pot each : product.pots()) add(pots, each, file);
    }
    return new Products(List.copyOf(products.values()), List.copyOf(pots.values()));
  }

  private static void add(Map<String, BenchSetup.Pot> pots, Pot pot, Path file) throws WrongUse {
    BenchSetup.Pot known =
        new BenchSetup.Pot(pot.name(), pot.empty(), pot.room().map(Fill::mass).orElse(Mass.ZERO));
    BenchSetup.Pot before = pots.put(pot.name(), known);
    if (before != null && !before.equals(known))
      throw new WrongUse(
          "'" + file + "': the pot '" + pot.name()
              + "' weighs or holds something else in another file. Make them agree, or give it a name of its own");
  }

  private static List<Path> kept(Path folder) throws WrongUse {
    if (!Files.isDirectory(folder)) return List.of();
    try (Stream<Path> all = Files.list(folder)) {
      return new ArrayList<>(
          all.filter(file -> file.toString().endsWith(".json")).sorted().toList());
    } catch (IOException unreadable) {
      throw new WrongUse("cannot read the folder '" + folder + "': " + unreadable.getMessage());
    }
  }
}
