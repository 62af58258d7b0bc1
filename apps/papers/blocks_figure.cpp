// Figures: kept whole, side by side where their shares leave room.
#include <algorithm>
#include <cmath>

#include "scene_on_cairo.hpp"
#include "strip.hpp"

namespace holdback::pdf {

namespace {

double share_of(const papers::Figure& figure) {
  return std::isfinite(figure.share) ? std::clamp(figure.share, 0.2, 1.0) : 1.0;
}

struct Placed {
  const papers::Figure* figure{};
  double x{};
  double width{};
};

/// A row of figures as one strip; all are made smaller when one of them is higher than a page.
void add_row(Strips& out, const Setting& setting, std::vector<Placed> row) {
  double height = 0;
  for (const auto& placed : row) height = std::max(height, height_of(placed.figure->scene, placed.width));
  const double most = setting.height - 0.5 * setting.size;
  const double fitted = height > most ? most / height : 1;
  for (auto& placed : row) placed.width *= fitted;
  Strip strip;
  strip.before = 0.9 * setting.size;
  strip.height = fitted * height + 0.4 * setting.size;
  strip.draw = [type = setting.type, row](cairo_t* cr, double x, double y) {
    for (const auto& placed : row) draw_scene(cr, *type, placed.figure->scene, x + placed.x, y, placed.width);
  };
  out.push_back(std::move(strip));
}

}  // namespace

void set_figures(Strips& out, const Setting& setting, const std::vector<const papers::Figure*>& figures) {
  constexpr double gap = 12;
  std::vector<Placed> row;
  double used = 0;
  for (const auto* figure : figures) {
    if (figure->scene.marks.empty()) continue;  // nothing to be seen
    const double width = share_of(*figure) * (setting.width + gap) - gap;
    if (!row.empty() && used + width > setting.width + 0.01) {
      add_row(out, setting, std::move(row));
      row.clear();
      used = 0;
    }
    row.push_back({figure, used, width});
    used += width + gap;
  }
  if (!row.empty()) add_row(out, setting, std::move(row));
}

}  // namespace holdback::pdf
