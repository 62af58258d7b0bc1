#include "holdback/papers/commissioning_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "holdback/papers/report_parts.hpp"

namespace holdback::papers::cards {

namespace {

using Member = double CommissioningPoint::*;

/// Decimals of a column: those of its nominal values where pads bite, three digits of the largest.
int decimals_of(const std::vector<CommissioningPoint>& points, Member nominal, Quantity kind, units::System system) {
  std::vector<double> set;
  for (const CommissioningPoint& point : points)
    if (point.pressure > 0) set.push_back(point.*nominal);
  const auto numbers = selection::column_text(set, kind, system, 3);
  const auto at = numbers.empty() ? std::string::npos : numbers.front().find('.');
  return at == std::string::npos ? 0 : static_cast<int>(numbers.front().size() - at - 1);
}

/// A nominal value and its bounds with the same decimals. The released brake gives little: it keeps two digits.
std::vector<std::string> results(const std::vector<CommissioningPoint>& points, Member member, Member nominal,
                                 Quantity kind, units::System system) {
  const int decimals = decimals_of(points, nominal, kind, system);
  std::vector<std::string> out;
  for (const CommissioningPoint& point : points) {
    const double about = units::in_display_unit(point.*nominal, kind, system);
    const bool little = !(point.pressure > 0) && about > 0;
    const int own = little ? std::clamp(1 - static_cast<int>(std::floor(std::log10(about))), 0, 4) : 0;
    out.push_back(fmt::format("{:.{}f}", units::in_display_unit(point.*member, kind, system), std::max(decimals, own)));
  }
  return out;
}

std::vector<std::string> pressures(const std::vector<CommissioningPoint>& points, units::System system) {
  std::vector<double> values;
  for (const CommissioningPoint& point : points) values.push_back(point.pressure);
  return selection::column_text(values, Quantity::pressure, system, 0);
}

}  // namespace

std::vector<CommissioningRow> commissioning_rows(const Commissioning& commissioning, units::System system) {
  const auto& points = commissioning.points;
  using P = CommissioningPoint;
  const auto pressure = pressures(points, system);
  const auto torque = results(points, &P::torque, &P::torque, Quantity::torque, system);
  const auto torque_low = results(points, &P::torque_low, &P::torque, Quantity::torque, system);
  const auto torque_high = results(points, &P::torque_high, &P::torque, Quantity::torque, system);
  const auto pull = results(points, &P::pull, &P::pull, Quantity::force, system);
  const auto pull_low = results(points, &P::pull_low, &P::pull, Quantity::force, system);
  const auto pull_high = results(points, &P::pull_high, &P::pull, Quantity::force, system);
  std::vector<CommissioningRow> rows;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const bool released = points[i].course == PressureCourse::unknown;
    rows.push_back({std::to_string(points[i].pairs), pressure[i],
                    released ? std::string{} : std::string(key_of(points[i].course)), torque[i], torque_low[i],
                    torque_high[i], pull[i], pull_low[i], pull_high[i], points[i].slack});
  }
  return rows;
}

}  // namespace holdback::papers::cards
