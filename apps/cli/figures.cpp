#include "figures.hpp"

#include <algorithm>
#include <cstdio>

#include "holdback/draw/cells.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"
#include "host.hpp"

namespace holdback::cli {

void write_figures(const Answer& answer, const Settings& settings, units::System system, const Stand* stand) {
  if (settings.svg.empty() || answer.outcome == Outcome::bad_input) return;
  const auto figures = draw::figures_of(answer, system, stand);
  make_folder(settings.svg);
  for (const auto& figure : figures) write_in(settings.svg, figure.file + ".svg", draw::svg(figure.scene));
  std::fprintf(stderr, "holdback: %zu figure%s in %s\n", figures.size(), figures.size() == 1 ? "" : "s",
               draw::plain(settings.svg).c_str());
}

void write_traces(const Answer& answer, const Settings& settings, units::System system) {
  if (settings.traces.empty() || !answer.simulation) return;
  make_folder(settings.traces);
  for (const MotionRun& run : answer.simulation->runs) {
    std::string name = "trace-" + run.control;
    std::replace(name.begin(), name.end(), ' ', '-');
    write_in(settings.traces, name + ".csv", report::trace_csv(run, system));
  }
  std::fprintf(stderr, "holdback: %zu trace%s in %s\n", answer.simulation->runs.size(),
               answer.simulation->runs.size() == 1 ? "" : "s", draw::plain(settings.traces).c_str());
}

}  // namespace holdback::cli
