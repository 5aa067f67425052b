package candlebench.protocol.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.protocol.CorpusRow;
import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScaleFormatsTest {

  @Test
  void a_format_is_found_by_its_id() {
    assertThat(ScaleFormats.of("and").id()).isEqualTo("and");
  }

  @Test
  void a_layout_and_a_family_are_found_by_their_ids() {
    for (String id : List.of(
        "nci",
        "nci/mdw-cont",
        "toledo",
        "toledo/chk",
        "toledo/short",
        "toledo/crlf",
        "cas",
        "cas/22",
        "cas/18",
        "cas/10",
        "cas/cmd",
        "cas/sw",
        "cas/ww",
        "cas/comma",
        "ricelake",
        "ricelake/unit2",
        "ricelake/cardinal",
        "ricelake/sb400",
        "ricelake/wtx",
        "ricelake/cmd",
        "kern",
        "kern/18",
        "kern/comma",
        "kern/gn",
        "kern/21",
        "kern/kcp",
        "adam",
        "adam/f1",
        "adam/f2",
        "adam/cpw",
        "adam/pgl",
        "yaohua",
        "yaohua/12",
        "yaohua/cmd",
        "yaohua/eq-rev",
        "yaohua/eq-fwd",
        "yaohua/a12")) assertThat(ScaleFormats.of(id).id()).isEqualTo(id);
  }

  @Test
  void an_unknown_format_is_answered_with_the_nearest_one() {
    assertThatThrownBy(() -> ScaleFormats.of("amd"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("nearest is 'and'");
  }

  @Test
  void every_format_has_an_id_of_its_own() {
    assertThat(CorpusRow.formats().map(ScaleFormat::id)).doesNotHaveDuplicates();
  }

  @Test
  void every_format_names_its_documents_its_line_settings_and_layouts_of_different_names() {
    assertThat(CorpusRow.formats()).allSatisfy(format -> {
      assertThat(format.title()).isNotBlank();
      assertThat(format.source()).isNotBlank();
      assertThat(format.lines()).isNotEmpty().doesNotHaveDuplicates();
      assertThat(format.layouts()).isNotEmpty();
      assertThat(format.layouts().stream().map(WireLayout::name)).doesNotHaveDuplicates();
    });
  }
}
