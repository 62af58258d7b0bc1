#include "holdback/field/trend.hpp"

#include <algorithm>
#include <array>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <map>
#include <stdexcept>

#include "holdback/field/forecast.hpp"

namespace holdback::field {

namespace {

constexpr double year = 365.25;  // [days]

/// What a fit holds.
struct Fitted {
  const char* key;
  Quantity kind;
  std::optional<double> HistoryEntry::*member;
};
constexpr std::array<Fitted, 4> fitted{
    Fitted{"torque_per_pressure", Quantity::torque_per_pressure, &HistoryEntry::torque_per_pressure},
    Fitted{"friction", Quantity::number, &HistoryEntry::friction},
    Fitted{"threshold", Quantity::pressure, &HistoryEntry::threshold},
    Fitted{"drag", Quantity::torque, &HistoryEntry::drag}};

struct Values {
  std::vector<int> day{};
  std::vector<double> value{};
};

}  // namespace

FrictionTrend trend(const std::vector<int>& day, const std::vector<double>& value) {
  std::vector<double> years;
  for (const int each : day) years.push_back((each - day.front()) / year);
  const WearLine line = wear_line(years, value);
  if (line.count < 3 || !(line.spread > 0))
    throw std::invalid_argument("trend: three values at different days are due");
  FrictionTrend out;
  out.count = line.count;
  out.from = *std::min_element(day.begin(), day.end());
  out.until = *std::max_element(day.begin(), day.end());
  out.per_year = -line.rate;
  const auto at = [&](int when) { return line.depth_mean - line.rate * ((when - day.front()) / year - line.use_mean); };
  out.first = at(out.from);
  out.last = at(out.until);
  const double freedom = line.count - 2;
  const double uncertainty = std::sqrt(line.residual / freedom / line.spread);
  const double reach = boost::math::quantile(boost::math::students_t(freedom), 0.95) * uncertainty;
  out.low = out.per_year - reach;
  out.high = out.per_year + reach;
  out.seen = out.low > 0 || out.high < 0;
  return out;
}

std::vector<FrictionTrend> trends_of(const std::vector<HistoryEntry>& held) {
  std::vector<FrictionTrend> out;
  for (const Fitted& what : fitted) {
    std::map<std::string, Values> by_brake;
    for (const HistoryEntry& entry : held) {
      if (entry.kind != EntryKind::fit || !(entry.*what.member)) continue;
      Values& values = by_brake[entry.brake];
      values.day.push_back(entry.day);
      values.value.push_back(*(entry.*what.member));
    }
    for (const auto& [brake, values] : by_brake) {
      if (values.day.size() < 3 || values.day.front() == values.day.back()) continue;
      out.push_back(trend(values.day, values.value));
      out.back().key = what.key;
      out.back().kind = what.kind;
      out.back().brake = brake;
    }
  }
  return out;
}

}  // namespace holdback::field
