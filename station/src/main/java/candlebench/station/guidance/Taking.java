package candlebench.station.guidance;

import candlebench.shared.Basis;
import candlebench.shared.Indication;
import candlebench.shared.Mass;
import candlebench.shared.MassUnit;
import candlebench.shared.Reading;
import candlebench.shared.Verdict;
import candlebench.station.batch.Part;
import candlebench.station.batch.Step;
import candlebench.station.guidance.GuidanceEvent.CureChecked;
import candlebench.station.guidance.GuidanceEvent.How;
import candlebench.station.guidance.GuidanceEvent.WeightAccepted;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Makes the record of a weight that is taken. */
record Taking(Goal goal, Trace trace, Scene scene) {

  /** Off the scale, from a settled reading. */
  List<GuidanceEvent> settled(Reading reading, String reason) {
    Mass net = goal.net(scene.load(goal.scale(), reading));
    return with(accepted(reading.indication(), reading.basis(), net, scene.how(), reason));
  }

  /** Read off by eye, where no scale answers. */
  List<GuidanceEvent> byHand(Mass net, String reason) {
    Indication typed = Indication.of(net.grams(), MassUnit.GRAM);
    return with(accepted(typed, Basis.NET, net, How.BY_HAND, reason));
  }

  private WeightAccepted accepted(
      Indication indication, Basis basis, Mass net, How how, String reason) {
    Pan pan = scene.pan(goal.scale());
    return new WeightAccepted(
        scene.now(),
        goal.place(),
        goal.name(),
        scene.batch().started().lots().getOrDefault(goal.name(), ""),
        goal.target(),
        pan.division().nearest(goal.target()),
        goal.tolerance(),
        indication,
        basis,
        goal.base(),
        goal.load(net),
        net,
        goal.tolerance().judge(goal.target(), net, pan.division()),
        how,
        reason,
        goal.scale(),
        scene.setup().scales().get(goal.scale()).name(),
        scene.person(),
        trace.points());
  }

  private List<GuidanceEvent> with(WeightAccepted weight) {
    List<GuidanceEvent> events = new ArrayList<>();
    events.add(weight);
    if (isLastOfCure()) events.addAll(cureChecked(weight));
    return events;
  }

  private boolean isLastOfCure() {
    Course course = scene.batch().course();
    return goal.place().kind() == Place.Kind.MORE
        && course.next().step().filter(Step.AddMore.class::isInstance).isEmpty();
  }

  /** After a remedy every part but wax is held against the wax that is there now. */
  private List<GuidanceEvent> cureChecked(WeightAccepted weight) {
    BatchProgress batch = scene.batch();
    Map<Integer, Mass> inPot = new TreeMap<>(batch.charge().inPot());
    inPot.merge(weight.place().number(), weight.net(), Mass::plus);
    List<GuidanceEvent> checked = new ArrayList<>();
    List<Part> parts = batch.started().recipe().parts();
    for (Map.Entry<Integer, Mass> there : inPot.entrySet()) {
      Part part = parts.get(there.getKey());
      if (part.isWax()) continue;
      Mass wanted = batch.plan().target(there.getKey(), inPot);
      Verdict verdict = part.tolerance()
          .judge(wanted, there.getValue(), scene.pan(goal.scale()).division());
      checked.add(new CureChecked(scene.now(), part.name(), wanted, there.getValue(), verdict));
    }
    return checked;
  }
}
