package candlebench.station.link.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import candlebench.protocol.Decoded;
import candlebench.protocol.Decoded.Weighed;
import candlebench.protocol.Frame;
import candlebench.protocol.LineSettings;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.formats.ScaleFormats;
import candlebench.shared.Mass;
import candlebench.shared.Stamp;
import candlebench.simulator.Pan;
import candlebench.simulator.PseudoTerminal;
import candlebench.simulator.RunningBench;
import candlebench.simulator.ScaleQuirks;
import candlebench.simulator.ScaleTraits;
import candlebench.simulator.SendMode;
import candlebench.simulator.VirtualScale;
import candlebench.station.link.Line;
import candlebench.station.link.LinkListener;
import candlebench.station.link.LinkReport;
import candlebench.station.link.LinkState;
import candlebench.station.link.ScaleLink;
import candlebench.station.link.ScaleSettings;
import candlebench.station.link.ScaleUri;
import candlebench.station.link.SerialLine;
import candlebench.station.link.SystemStamps;
import candlebench.station.link.find.Found.Sending;
import candlebench.station.link.find.Search.Doing;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The search on real device nodes, whose far end hears what it is set to and garbles what does not fit. */
@EnabledOnOs(OS.LINUX)
class ScaleFinderTest {

  @TempDir
  Path folder;

  private record Plugged(String id, LineSettings line, SendMode mode, PseudoTerminal terminal) {}

  @Test
  void four_scales_of_different_settings_are_found_and_live() throws Exception {
    List<Plugged> plugged = List.of(
        plug("and", "2400-7E1", SendMode.CONTINUOUS),
        plug("sics", "9600-8N1", SendMode.ON_REQUEST),
        plug("sbi", "1200-7O1", SendMode.CONTINUOUS),
        plug("ohaus", "2400-7N2", SendMode.ON_REQUEST));
    try (RunningBench bench =
        RunningBench.start(plugged.stream().map(this::station).toList(), nanos -> {})) {
      for (Plugged scale : plugged) {
        long start = System.nanoTime();
        BlockingQueue<Search> over = new LinkedBlockingQueue<>();
        Set<Doing> did = ConcurrentHashMap.newKeySet();
        try (ScaleFinder finder = finder(scale, over, did)) {
          finder.start();
          Search search = over.poll(60, TimeUnit.SECONDS);
          assertThat(search).as("%s %s", scale.id(), finder.search()).isNotNull();
          Found found = search.found().orElseThrow();
          boolean asked = scale.mode() == SendMode.ON_REQUEST;
          assertThat(found.sending()).isEqualTo(asked ? Sending.WHEN_ASKED : Sending.BY_ITSELF);
          assertThat(found.line()).isEqualTo(scale.line());
          assertThat(found.heard().recognition().fitting().get(0).format().id())
              .isEqualTo(scale.id());
          assertThat(did).contains(Doing.LISTENING).hasSize(asked ? 2 : 1);
          awaitLive(found.uri(scale.terminal().address(), ScaleFormats.of(scale.id())));
          System.out.printf(
              "%s at %s, %s: live after %.1f s%n",
              scale.id(), scale.line(), found.sending(), (System.nanoTime() - start) / 1e9);
        }
      }
      assertThat(bench.<Boolean>ask(plugged.get(0).terminal()::isOpened)).isFalse();
    }
  }

  @Test
  void a_port_that_is_held_or_gone_is_said_to_be() throws Exception {
    try (PseudoTerminal terminal = new PseudoTerminal(folder.resolve("held"))) {
      var held = new SerialLine(terminal.address(), LineSettings.of("9600-8N1"));
      var opened = (Line.Opened) held.open();
      assertThat(troubleAt(terminal.address())).isEqualTo(LinkState.HELD);
      opened.port().close();
    }
    assertThat(troubleAt(folder.resolve("nothing").toString())).isEqualTo(LinkState.LOST);
  }

  @Test
  void an_error_of_ours_ends_the_search_and_is_said() throws Exception {
    BlockingQueue<Search> told = new LinkedBlockingQueue<>();
    try (ScaleFinder finder = new ScaleFinder(
        line -> {
          throw new IllegalStateException("made for this test");
        },
        ScaleFormats.all(),
        new SystemStamps(),
        told::add)) {
      finder.start();
      assertThat(told.poll(20, TimeUnit.SECONDS).isOver()).isFalse();
      assertThat(told.poll(20, TimeUnit.SECONDS).trouble()).contains(LinkReport.of(LinkState.LOST));
    }
  }

  @Test
  void a_search_that_is_closed_frees_its_port() throws Exception {
    try (PseudoTerminal terminal = new PseudoTerminal(folder.resolve("scale"))) {
      CountDownLatch opened = new CountDownLatch(1);
      ScaleFinder finder = new ScaleFinder(
          line -> () -> {
            var opening = new SerialLine(terminal.address(), line).open();
            opened.countDown();
            return opening;
          },
          ScaleFormats.all(),
          new SystemStamps(),
          search -> {});
      finder.start();
      assertThat(opened.await(20, TimeUnit.SECONDS)).isTrue();
      finder.close();
      assertThat(terminal.isOpened()).isFalse();
      assertThat(finder.search().isOver()).isFalse();
    }
  }

  private LinkState troubleAt(String device) throws InterruptedException {
    BlockingQueue<Search> over = new LinkedBlockingQueue<>();
    try (ScaleFinder finder =
        ScaleFinder.on(device, ScaleFormats.all(), new SystemStamps(), search -> {
          if (search.isOver()) over.add(search);
        })) {
      finder.start();
      Search search = over.poll(20, TimeUnit.SECONDS);
      assertThat(search).isNotNull();
      return search.trouble().orElseThrow().state();
    }
  }

  private ScaleFinder finder(Plugged scale, BlockingQueue<Search> over, Set<Doing> did) {
    return ScaleFinder.on(
        scale.terminal().address(), ScaleFormats.all(), new SystemStamps(), search -> {
          did.add(search.doing());
          if (search.isOver()) over.add(search);
        });
  }

  private Plugged plug(String id, String line, SendMode mode) {
    return new Plugged(id, LineSettings.of(line), mode, new PseudoTerminal(folder.resolve(id)));
  }

  private RunningBench.Station station(Plugged scale) {
    ScaleFormat format = ScaleFormats.of(scale.id());
    Pan pan = new Pan();
    ScaleTraits traits = ScaleTraits.benchThreeKilograms().with(scale.mode()).with(scale.line());
    VirtualScale virtual =
        new VirtualScale(traits, ScaleQuirks.none(), format, format.layouts().get(0), pan, 1);
    pan.putOn("pot", Mass.ofGrams("450"));
    return new RunningBench.Station(virtual, scale.terminal());
  }

  private static void awaitLive(String uri) throws InterruptedException {
    ScaleSettings settings = ScaleUri.of(uri);
    BlockingQueue<Decoded> heard = new LinkedBlockingQueue<>();
    List<LinkReport> reports = new ArrayList<>();
    try (ScaleLink link = new ScaleLink(
        0,
        settings,
        new LinkListener() {
          @Override
          public void heard(int scale, Frame frame, Decoded decoded) {
            heard.add(decoded);
          }

          @Override
          public void printKeyPressed(int scale, Stamp stamp) {}

          @Override
          public void changed(int scale, LinkReport report, Stamp stamp) {
            reports.add(report);
          }
        },
        new SystemStamps())) {
      link.start();
      Decoded first = heard.poll(20, TimeUnit.SECONDS);
      assertThat(first).isInstanceOf(Weighed.class);
      double shown = Double.parseDouble(((Weighed) first).indication().number());
      assertThat(shown).isCloseTo(450, within(0.5));
    }
    assertThat(reports).contains(LinkReport.of(LinkState.LIVE));
  }
}
