#include "figures.hpp"

#include <cstdio>

#include "holdback/draw/cells.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"
#include "host.hpp"

namespace holdback::cli {

void write_figures(const Answer& answer, const Settings& settings, units::System system) {
  if (settings.svg.empty() || answer.outcome == Outcome::bad_input) return;
  const auto figures = draw::figures_of(answer, system);
  make_folder(settings.svg);
  for (const auto& figure : figures) write_in(settings.svg, figure.file + ".svg", draw::svg(figure.scene));
  std::fprintf(stderr, "holdback: %zu figure%s in %s\n", figures.size(), figures.size() == 1 ? "" : "s",
               draw::plain(settings.svg).c_str());
}

}  // namespace holdback::cli
