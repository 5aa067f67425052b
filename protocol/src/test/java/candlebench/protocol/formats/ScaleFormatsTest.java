package candlebench.protocol.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import candlebench.protocol.ScaleFormat;
import candlebench.protocol.WireLayout;
import org.junit.jupiter.api.Test;

class ScaleFormatsTest {

  @Test
  void a_format_is_found_by_its_id() {
    assertThat(ScaleFormats.of("and").id()).isEqualTo("and");
  }

  @Test
  void an_unknown_format_is_answered_with_the_nearest_one() {
    assertThatThrownBy(() -> ScaleFormats.of("amd"))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("nearest is 'and'");
  }

  @Test
  void every_format_has_an_id_of_its_own() {
    assertThat(ScaleFormats.all().stream().map(ScaleFormat::id)).doesNotHaveDuplicates();
  }

  @Test
  void every_format_names_its_documents_its_line_settings_and_layouts_of_different_names() {
    assertThat(ScaleFormats.all()).allSatisfy(format -> {
      assertThat(format.title()).isNotBlank();
      assertThat(format.source()).isNotBlank();
      assertThat(format.lines()).isNotEmpty().doesNotHaveDuplicates();
      assertThat(format.layouts()).isNotEmpty();
      assertThat(format.layouts().stream().map(WireLayout::name)).doesNotHaveDuplicates();
    });
  }
}
