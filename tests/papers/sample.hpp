// Papers made by hand: one with every kind of block, a card, and scenes for figures. All names and numbers are
// invented.
#pragma once

#include <fmt/format.h>

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "holdback/draw/sketch.hpp"
#include "holdback/papers/paper.hpp"

namespace holdback::papers {

inline draw::Scene curve_scene(const std::string& title, int points = 200) {
  using namespace draw;
  Scene scene{180, 90, title, "a curve below a limit", {}};
  add(scene, Label{{0, 4}, title, Anchor::start, 4, Weight::bold, 0}, {MarkRole::text});
  add(scene, Rectangle{{20, 10, 170, 75}, false}, {MarkRole::axis});
  for (int i = 1; i < 5; ++i) {
    const double x = 20 + 30 * i;
    add(scene, Segment{{x, 10}, {x, 75}}, {MarkRole::grid});
    add(scene, Label{{x, 79}, fmt::format("{}", 200 * i), Anchor::middle, 3, Weight::normal, 0}, {MarkRole::text});
  }
  Polyline line;
  Polygon area;
  for (int i = 0; i <= points; ++i) {
    const double s = static_cast<double>(i) / points;
    line.points.push_back({20 + 150 * s, 65 - 30 * s - 4 * std::sin(12 * s)});
  }
  area.points = {{20, 75}, {20, 65}, {170, 35}, {170, 75}};
  add(scene, area, {MarkRole::area});
  add(scene, line, {MarkRole::curve, Pattern::solid, 0});
  add(scene, Segment{{20, 22}, {170, 22}}, {MarkRole::limit, Pattern::dashed, 0});
  add(scene, Segment{{20, 30}, {170, 30}}, {MarkRole::curve, Pattern::dotted, 1});
  add(scene, Label{{95, 20}, "rated torque 120 N·m", Anchor::middle, 3, Weight::normal, 0}, {MarkRole::text});
  add(scene, Label{{8, 42}, "torque [N·m]", Anchor::middle, 3, Weight::normal, -90}, {MarkRole::text});
  add(scene, Label{{95, 87}, "roll diameter [mm]", Anchor::middle, 3, Weight::normal, 0}, {MarkRole::text});
  draw_roller(scene, {150, 62}, 7);
  draw_arrow(scene, {120, 62}, {141, 62}, force_style);
  return scene;
}

inline Cell state_cell(State state) { return {std::string(key_of(state)), Tone::normal, true, state}; }

inline Table job_table(int rows) {
  Table table{"The mix, job by job",
              {{"job", "", false},
               {"web width", "mm", true},
               {"highest torque at the core", "N·m", true},
               {"pressure", "bar", true},
               {"state", "", false},
               {"note", "", false}},
              {},
              0,
              false};
  for (int i = 1; i <= rows; ++i) {
    table.rows.push_back({{fmt::format("Job {} paper labels", i)},
                          {fmt::format("{}", 300 + 7 * i)},
                          {fmt::format("{:.1f}", 9.3 + 1.37 * i)},
                          {fmt::format("{:.2f}", 0.31 + 0.02 * i)},
                          state_cell(static_cast<State>(i % 3)),
                          {i % 4 == 0 ? "runs slower below 300 mm, see the cautions" : "", Tone::muted}});
  }
  return table;
}

inline Equation torque_equation() {
  return {"Brake torque in steady run",        "brake_torque", "M = F · d / 2 − M_drag",
          "M = 120 N · 1.000 m / 2 − 1.5 N·m", "M = 58.5 N·m", "balance of moments about the shaft"};
}

/// A paper of these blocks and nothing more.
inline Paper plain_paper(std::vector<Block> blocks) {
  return {Kind::selection_report, "plain", "Plain paper", "Invented stand", "2026-11-28", false, false, 9.5,
          std::move(blocks)};
}

inline Paper report_paper(int rows = 60) {
  Paper paper{Kind::selection_report,
              "selection-report",
              "Selection report",
              "Label slitter, unwind 1",
              "2026-11-28",
              true,
              false,
              9.5,
              {}};
  paper.blocks = {
      Facts{{{"stand", "Label slitter, unwind 1"}, {"file", "label-slitter.toml"}, {"units", "SI"}, {"jobs", "60"}},
            1,
            false},
      Heading{"Result", 1},
      Verdict{State::holds, "holds: every job of the mix is covered by 2 × D300, 3 pairs each"},
      Verdict{State::tight, "tight: pad life of job 12 is within its reserve"},
      Verdict{State::fails, "fails: emergency stop of job 40 at the lowest friction"},
      Paragraph{
          "The recommended fit covers the mix with the pressure ceiling of the regulator in hand. What drives the "
          "result is the friction of the pads, known within ± 20 %; the torque at the core follows from web "
          "tension and diameter (ẋ, ∂, √, Σ, µ, Ω are set as they are).",
          Tone::normal},
      Paragraph{"A line that is meant strongly.", Tone::strong},
      Paragraph{"A muted remark: values that the file leaves out are taken from the defaults listed below.",
                Tone::muted},
      Heading{"Key figures", 2},
      Facts{{{"web tension", "120 N"},
             {"line speed", "300 m/min"},
             {"largest roll", "1000 mm, 410 kg"},
             {"core", "76 mm, paper, gripped by an expanding shaft with three leaves"},
             {"highest torque", "58.5 N·m"},
             {"slip power", "610 W"}},
            2,
            false},
      Figure{curve_scene("Torque over the roll"), 1},
      Figure{curve_scene("Left of two"), 0.5},
      Figure{curve_scene("Right of two"), 0.5},
      Heading{"The mix", 1},
      job_table(rows),
      Heading{"Equations for one worked job", 1},
      torque_equation(),
      torque_equation(),
      Heading{"Cautions", 1},
      Warning{Signal::danger,
              "The roll keeps turning after an emergency stop: keep the guard closed until it stands still."},
      Warning{Signal::warning,
              "Isolate, lock out and release the air before hands go between disc and pads. The stored "
              "pressure in the line may close a caliper at any time, even with the machine stopped."},
      Warning{Signal::caution, "Disc and pads are hot after a long run."},
      Warning{Signal::notice, "Run new pads in before a critical job."},
      Heading{"Steps", 2},
      Items{{"isolate the drive", "lock out", "release the air, and see the gauge at zero", "change the pads"}, true},
      Heading{"Assumptions", 3},
      Items{{"friction of the pads 0.35 to 0.45, by the maker",
             "air supply steady within 0.1 bar, which nobody measured, "
             "and which is taken from the usual practice of the trade without a source of its own"},
            false},
      PageBreak{},
      Heading{"To be filled in", 1},
      Table{"Readings",
            {{"diameter", "mm", true}, {"pressure", "bar", true}, {"tension", "N", true}, {"remark", "", false}},
            {{{"1000"}}, {{"800"}}, {{"600"}}, {{"400"}}},
            9,
            false},
  };
  return paper;
}

inline Paper card_paper(const std::string& job) {
  Paper paper{Kind::setup_card, "card-01", "Set-up card", job, "2026-11-28", false, true, 12, {}};
  Table pressures{"Pressure by hand",
                  {{"roll diameter", "mm", true}, {"pressure", "bar", true}, {"tension", "N", true}},
                  {},
                  0,
                  true};
  for (int d = 1000; d >= 300; d -= 100) {
    pressures.rows.push_back({{fmt::format("{}", d)}, {fmt::format("{:.2f}", 0.0025 * d), Tone::strong}, {"120"}});
  }
  paper.blocks = {
      Facts{{{"web tension", "120 N"},
             {"line speed", "300 m/min"},
             {"pairs to engage", "3 of 6"},
             {"core", "76 mm"},
             {"web", "paper, 60 µm"},
             {"stop", "controlled, 8 s"}},
            3,
            true},
      Figure{curve_scene("Pairs to engage"), 0.7},
      pressures,
      Items{{"too high a reading: lower the pressure by 0.1 bar and read again", "too low: check the supply first"},
            false},
      Warning{Signal::warning, "Keep hands off the roll while it turns."},
  };
  return paper;
}

}  // namespace holdback::papers
