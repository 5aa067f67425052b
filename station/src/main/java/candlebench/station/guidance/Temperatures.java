package candlebench.station.guidance;

import candlebench.station.batch.Part;
import candlebench.station.batch.ProcessWindows;
import candlebench.station.batch.ProcessWindows.Process;
import candlebench.station.batch.ProcessWindows.Window;
import candlebench.station.batch.Product;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.TemperatureNoted;
import candlebench.station.guidance.GuidanceEvent.TemperatureOutside;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Typed temperatures against the windows of the wax. That a flash point lies below the temperature of the wax is no reason for an alarm;
 * the supplier's cautions stand.
 */
final class Temperatures {

  private Temperatures() {}

  static List<GuidanceEvent> noted(int tenths, Scene scene) {
    List<GuidanceEvent> events = new ArrayList<>();
    events.add(new TemperatureNoted(scene.now(), tenths));
    Optional<Process> process = scene.batch().step().flatMap(step -> process(step, scene));
    process
        .flatMap(which -> window(which, scene))
        .filter(window -> !window.holds(tenths))
        .map(window -> new TemperatureOutside(
            scene.now(), tenths, process.orElseThrow(), window.fromTenths(), window.toTenths()))
        .ifPresent(events::add);
    return events;
  }

  private static Optional<Window> window(Process process, Scene scene) {
    BatchProgress batch = scene.batch();
    List<ProcessWindows> known = scene
        .setup()
        .product(batch.started().recipe().id())
        .map(Product::windows)
        .orElse(List.of());
    List<String> lots = batch.started().recipe().parts().stream()
        .filter(Part::isWax)
        .map(wax -> batch.started().lots().getOrDefault(wax.name(), ""))
        .toList();
    return ProcessWindows.of(process, known, lots);
  }

  /** What is done to the wax in a step; nothing yet while the vessels are set out. */
  private static Optional<Process> process(Step step, Scene scene) {
    if (step instanceof Step.Prepare) return Optional.empty();
    if (step instanceof Step.FillVessel) return Optional.of(Process.POUR);
    boolean melts = step instanceof Step.PlacePot
        || step instanceof Step.Melt
        || step instanceof Step.ReturnPot
        || step instanceof Step.AddPart add
            && scene.batch().started().recipe().parts().get(add.part()).isWax();
    return Optional.of(melts ? Process.MELT : Process.OIL);
  }
}
