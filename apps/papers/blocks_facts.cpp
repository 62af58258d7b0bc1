// Facts in columns: a label with its value, with a thin rule under each row.
#include <algorithm>

#include "marks.hpp"
#include "strip.hpp"

namespace holdback::pdf {

namespace {

struct SetFact {
  TextPtr label{};
  TextPtr value{};
};

/// The columns' places: all are equally wide.
struct Grid {
  std::size_t columns{};
  double width{};  // of one
  double gap{};
  double left(std::size_t column) const { return static_cast<double>(column) * (width + gap); }
};

Grid grid_of(const Setting& setting, const papers::Facts& facts) {
  const auto wanted = static_cast<std::size_t>(std::clamp(facts.columns, 1, 6));
  const auto columns = std::max<std::size_t>(std::min(wanted, facts.facts.size()), 1);
  const double gap = 1.8 * setting.size;
  const auto count = static_cast<double>(columns);
  return {columns, (setting.width - (count - 1) * gap) / count, gap};
}

/// The label before the value, on one line where both have room.
void set_small(Strips& out, const Setting& setting, const papers::Facts& facts, const Grid& grid) {
  const double e = setting.size;
  const Face face{e, false, 1.25};
  std::vector<double> labels(grid.columns);  // widths
  for (std::size_t i = 0; i < facts.facts.size(); ++i) {
    auto& widest = labels[i % grid.columns];
    widest = std::max(widest, setting.type->width(facts.facts[i].label, face));
  }
  for (auto& width : labels) width = std::min(width, 0.5 * grid.width);
  const double pad = 0.28 * e;
  for (std::size_t at = 0; at < facts.facts.size(); at += grid.columns) {
    std::vector<SetFact> row;
    double height = 0;
    for (auto i = at; i < std::min(at + grid.columns, facts.facts.size()); ++i) {
      const double label = labels[i - at];
      row.push_back({setting.type->wrapped(facts.facts[i].label, face, label + 0.01),
                     setting.type->wrapped(facts.facts[i].value, face, grid.width - label - 0.8 * e)});
      height = std::max({height, row.back().label->height(), row.back().value->height()});
    }
    Strip strip;
    strip.before = at == 0 ? 0.6 * e : 0;
    strip.height = height + 2 * pad;
    strip.draw = [=](cairo_t* cr, double x, double y) {
      for (std::size_t i = 0; i < row.size(); ++i) {
        row[i].label->draw(cr, x + grid.left(i), y + pad, muted);
        row[i].value->draw(cr, x + grid.left(i) + labels[i] + 0.8 * e, y + pad, black);
        draw_rule(cr, x + grid.left(i), y + height + 2 * pad, grid.width, 0.4, rule);
      }
    };
    out.push_back(std::move(strip));
  }
}

/// The value in large type under its label, for reading from an arm's length.
void set_large(Strips& out, const Setting& setting, const papers::Facts& facts, const Grid& grid) {
  const double e = std::max(setting.size, arms_length);
  const double pad = 0.25 * e;
  for (std::size_t at = 0; at < facts.facts.size(); at += grid.columns) {
    std::vector<SetFact> row;
    double labels = 0;
    double values = 0;
    for (auto i = at; i < std::min(at + grid.columns, facts.facts.size()); ++i) {
      row.push_back({setting.type->wrapped(facts.facts[i].label, {e, false, 1.15}, grid.width),
                     setting.type->wrapped(facts.facts[i].value, {1.4 * e, true, 1.15}, grid.width)});
      labels = std::max(labels, row.back().label->height());
      values = std::max(values, row.back().value->height());
    }
    Strip strip;
    strip.before = at == 0 ? 0.7 * setting.size : 0.35 * e;
    strip.height = labels + values + 2 * pad;
    strip.draw = [=](cairo_t* cr, double x, double y) {
      for (std::size_t i = 0; i < row.size(); ++i) {
        draw_rule(cr, x + grid.left(i), y, grid.width, 0.8, accent);
        row[i].label->draw(cr, x + grid.left(i), y + pad, muted);
        row[i].value->draw(cr, x + grid.left(i), y + pad + labels, black);
      }
    };
    out.push_back(std::move(strip));
  }
}

}  // namespace

void set_facts(Strips& out, const Setting& setting, const papers::Facts& facts) {
  const auto first = out.size();
  const auto grid = grid_of(setting, facts);
  facts.large ? set_large(out, setting, facts, grid) : set_small(out, setting, facts, grid);
  constexpr std::size_t short_enough = 12;  // rows that stay together
  if (out.size() - first > short_enough) return;
  for (auto i = first; i + 1 < out.size(); ++i) out[i].keeps = true;
}

}  // namespace holdback::pdf
