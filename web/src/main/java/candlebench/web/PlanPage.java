package candlebench.web;

import candlebench.station.batch.planning.PlanJson;
import candlebench.station.batch.planning.RecipeJson;
import candlebench.station.batch.planning.UnreadablePlan;
import candlebench.station.batch.planning.WorkshopPlan;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** What the page of the plan asks for. A plan is worked out and shown; nothing of it is kept. */
final class PlanPage {

  private PlanPage() {}

  static void routes(JavalinConfig config) {
    config.routes.get(
        "/api/plan-example",
        request -> request.contentType("application/json").result(PlanCommand.example()));
    config.routes.post("/api/plan", PlanPage::plan);
  }

  /** Plans the plan file in the body; a plan that is refused says so in its verdict. */
  private static void plan(Context request) {
    try {
      String file = StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(request.bodyAsBytes()))
          .toString();
      WorkshopPlan plan = WorkshopPlan.of(RecipeJson.read(file));
      request.contentType("application/json").result(PlanJson.text(plan));
    } catch (CharacterCodingException foreign) {
      throw new IllegalArgumentException("the plan file is not in UTF-8: save it as UTF-8");
    } catch (UnreadablePlan wrong) {
      throw new IllegalArgumentException("the plan file: " + wrong.getMessage());
    }
  }
}
