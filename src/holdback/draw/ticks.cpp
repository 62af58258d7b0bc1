#include "holdback/draw/ticks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdback::draw {

namespace {

constexpr double too_large = 1e100;
constexpr double too_small = 1e-100;
constexpr double slack = 1e-9;  // of a step: what rounding may take

double shown(double value) { return showable(value) && std::abs(value) > too_small ? value : 0; }

double largest(const Range& range) { return std::max(std::abs(range.low), std::abs(range.high)); }

std::string superscript(int number) {
  constexpr std::array<std::string_view, 10> digits{"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
  std::string out;
  for (const char c : std::to_string(std::abs(number))) out += digits[static_cast<std::size_t>(c - '0')];
  return (number < 0 ? "⁻" : "") + out;
}

/// A number with so many decimals, a true minus, and thousands apart from five digits on.
std::string written(double value, int decimals) {
  auto text = fmt::format("{:.{}f}", std::abs(value), decimals);
  const auto point = static_cast<std::ptrdiff_t>(std::min(text.find('.'), text.size()));
  for (auto at = point - 3; point > 4 && at > 0; at -= 3) text.insert(static_cast<std::size_t>(at), "\u2009");
  const bool zero = text.find_first_not_of("0.") == std::string::npos;
  return (value < 0 && !zero ? "−" : "") + text;
}

}  // namespace

bool showable(double value) { return std::isfinite(value) && std::abs(value) < too_large; }

Range opened(Range range) {
  range = {shown(std::min(range.low, range.high)), shown(std::max(range.low, range.high))};
  const double size = largest(range);
  if (range.high - range.low > 1e-6 * size) return range;
  if (size <= 0) return {0, 1};
  return {range.low - 0.05 * size, range.high + 0.05 * size};
}

double nice_step(const Range& range, int most) {
  const double rough = (range.high - range.low) / std::max(most, 1);
  const double power = std::pow(10, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= rough * (1 - slack)) return factor * power;
  }
  return 10 * power;
}

std::vector<double> nice_ticks(const Range& range, int most) {
  const double step = nice_step(range, most);
  const double first = std::ceil(range.low / step - slack);
  std::vector<double> ticks;
  for (int i = 0; i <= most && (first + i) * step <= range.high + slack * step; ++i)
    ticks.push_back((first + i) * step);
  return ticks;
}

Range rounded_out(const Range& range, int most) {
  const double step = nice_step(range, most);
  return {std::floor(range.low / step + slack) * step, std::ceil(range.high / step - slack) * step};
}

TickText tick_text(const std::vector<double>& ticks) {
  TickText out;
  if (ticks.empty()) return out;
  const double most = largest({ticks.front(), ticks.back()});
  const double step = ticks.size() > 1 ? ticks[1] - ticks[0] : most;
  if (most >= 1e6 || (most > 0 && most < 1e-3)) out.exponent = 3 * static_cast<int>(std::floor(std::log10(most) / 3));
  const double unit = std::pow(10, out.exponent);
  const int decimals = step > 0 ? std::clamp(-static_cast<int>(std::floor(std::log10(step / unit) + slack)), 0, 9) : 0;
  for (const double tick : ticks) out.texts.push_back(written(tick / unit, decimals));
  return out;
}

std::string unit_text(std::string_view unit, int exponent) {
  if (exponent == 0) return std::string(unit);
  return "10" + superscript(exponent) + (unit.empty() ? "" : " ") + std::string(unit);
}

}  // namespace holdback::draw
