#include "holdback/papers/report_parts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "holdback/draw/cells.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/units/digits.hpp"

namespace holdback::papers::selection {

namespace {

constexpr int most_decimals = 6;

std::string plain(std::string_view text) { return draw::plain(text); }

/// Digits before the point; none or fewer for numbers below one.
int places_before(double number) {
  return number == 0 || !std::isfinite(number) ? 1 : static_cast<int>(std::floor(std::log10(std::abs(number)))) + 1;
}

/// Rounded to so many digits before the point; what stands behind it is left to the decimals that are shown.
double rounded(double number, int digits) {
  if (!std::isfinite(number) || places_before(number) <= digits) return number;
  const double step = std::pow(10, places_before(number) - digits);
  return std::round(number / step) * step;
}

/// Whole thousands stand apart from five digits on: "12 000".
std::string thousands_apart(std::string text) {
  const auto start = text.find_first_of("0123456789");
  const auto end = std::min(text.find('.'), text.size());
  if (start == std::string::npos || end - start < 5 || text.find('e') != std::string::npos) return text;
  for (auto at = end; at > start + 3;) {
    at -= 3;
    text.insert(at, "\u00A0");
  }
  return text;
}

std::string with_unit(const std::string& number, Quantity kind, units::System system) {
  const auto unit = units::unit_of(kind, system);
  return report::kept_together(number + (unit.empty() ? "" : " " + unit));
}

bool shows_all(const std::vector<double>& numbers, int decimals) {
  const double scale = std::pow(10, decimals);
  return std::all_of(numbers.begin(), numbers.end(), [&](double number) {
    return !std::isfinite(number) || std::abs(std::round(number * scale) / scale - number) <= 1e-6 * std::abs(number);
  });
}

double largest_of(const std::vector<double>& numbers) {
  double largest = 0;
  for (const double number : numbers)
    if (std::isfinite(number)) largest = std::max(largest, std::abs(number));
  return largest;
}

double smallest_of(const std::vector<double>& numbers) {
  double smallest = largest_of(numbers);
  for (const double number : numbers)
    if (std::isfinite(number) && number != 0) smallest = std::min(smallest, std::abs(number));
  return smallest;
}

/// The fewest decimals that show every input, four digits of the largest at most.
int decimals_of_inputs(const std::vector<double>& numbers) {
  const int most = std::clamp(4 - places_before(largest_of(numbers)), 0, most_decimals);
  for (int decimals = 0; decimals < most; ++decimals)
    if (shows_all(numbers, decimals)) return decimals;
  return most;
}

/// Decimals with which the largest shows `digits` digits; one more where the smallest would show fewer than two.
int decimals_of_results(const std::vector<double>& numbers, int digits) {
  const int usual = digits - places_before(largest_of(numbers));
  return std::clamp(std::max(usual, std::min(2 - places_before(smallest_of(numbers)), usual + 1)), 0, most_decimals);
}

std::string cell_text(double number, int decimals) {
  if (std::isnan(number)) return "–";
  if (std::isinf(number)) return "∞";
  return thousands_apart(fmt::format("{:.{}f}", number, decimals));
}

template <typename T>
T* last(std::vector<Block>& blocks) {
  return blocks.empty() ? nullptr : std::get_if<T>(&blocks.back());
}

}  // namespace

void Chapter::heading(std::string_view text, int level) {
  while (const auto* before = last<Heading>(blocks_)) {
    if (before->level < level) break;
    blocks_.pop_back();
  }
  blocks_.emplace_back(Heading{plain(text), level});
}

void Chapter::say(std::string_view text, Tone tone) { blocks_.emplace_back(Paragraph{plain(text), tone}); }

void Chapter::verdict(State state, std::string_view text) { blocks_.emplace_back(Verdict{state, plain(text)}); }

void Chapter::items(std::vector<std::string> items, bool numbered) {
  if (items.empty()) return;
  for (auto& item : items) item = plain(item);
  blocks_.emplace_back(Items{std::move(items), numbered});
}

void Chapter::facts(std::vector<Fact> facts, int columns) {
  facts.erase(std::remove_if(facts.begin(), facts.end(), [](const Fact& fact) { return fact.value.empty(); }),
              facts.end());
  if (facts.empty()) return;
  for (auto& fact : facts) fact.value = plain(fact.value);
  blocks_.emplace_back(Facts{std::move(facts), columns, false});
}

void Chapter::table(Table table) {
  if (table.rows.empty() || table.columns.empty()) return;
  for (auto& row : table.rows)
    for (auto& cell : row) cell.text = plain(cell.text);
  table.caption = plain(table.caption);
  blocks_.emplace_back(std::move(table));
}

void Chapter::figure(draw::Scene scene, double share) { blocks_.emplace_back(Figure{std::move(scene), share}); }

void Chapter::warning(Signal signal, std::string_view text) { blocks_.emplace_back(Warning{signal, plain(text)}); }

void Chapter::equation(Equation equation) { blocks_.emplace_back(std::move(equation)); }

std::vector<Block> Chapter::take() {
  while (last<Heading>(blocks_) != nullptr) blocks_.pop_back();
  return std::move(blocks_);
}

std::string meant(double si, Quantity kind, units::System system, int digits) {
  const double number = units::in_display_unit(si, kind, system);
  if (!std::isfinite(number)) return report::shown(si, kind, system);
  return with_unit(thousands_apart(units::readable(rounded(number, digits), digits)), kind, system);
}

std::string given(double si, Quantity kind, units::System system) {
  const std::vector<double> number{units::in_display_unit(si, kind, system)};
  if (!std::isfinite(number.front())) return report::shown(si, kind, system);
  const int most = std::clamp(5 - places_before(number.front()), 0, 12);
  int decimals = 0;
  while (decimals < most && !shows_all(number, decimals)) ++decimals;
  // A round number of the other system: its digits here are those of the conversion.
  if (!shows_all(number, decimals)) return meant(si, kind, system);
  if (decimals > most_decimals) return report::shown(si, kind, system);
  return with_unit(thousands_apart(fmt::format("{:.{}f}", number.front(), decimals)), kind, system);
}

std::string life(double seconds, units::System system) { return meant(seconds, Quantity::running_time, system, 2); }

std::string spell(double seconds, units::System system) {
  constexpr double minute = 60;
  constexpr double hour = 3600;
  if (seconds < 2 * minute) return meant(seconds, Quantity::duration, system, 2);
  if (seconds < 2 * hour) return report::kept_together(fmt::format("{:.0f} min", seconds / minute));
  return meant(seconds, Quantity::running_time, system, 2);
}

std::string chance(double share) {
  if (share >= 1) return report::kept_together("100 %");
  if (share > 0.999) return report::kept_together(">99.9 %");
  // Rounded down: a chance is never shown better than it is.
  const int decimals = share < 0.1 || share > 0.99 ? 1 : 0;
  const double scale = std::pow(10, decimals);
  return report::kept_together(fmt::format("{:.{}f} %", std::floor(100 * share * scale + 1e-9) / scale, decimals));
}

std::string_view known_by(Known known) {
  if (known == Known::formula) return "formula";
  if (known == Known::rating) return "maker's rating";
  return known == Known::setting ? "setting" : "common practice";
}

std::string where(const Limit& limit, units::System system) {
  const auto at = report::at_diameter(limit.diameter, system);
  return std::string(name_of(limit.load_case)) + (at.empty() ? "" : " " + at);
}

std::string_view sign_of(Sense sense) { return sense == Sense::at_most ? "≤ " : "≥ "; }

Cell state_cell(State state) { return judged(std::string(key_of(state)), state); }

Cell judged(std::string text, State state) {
  return {std::move(text), state == State::fails ? Tone::strong : Tone::normal, true, state};
}

Cell in_hand_of(const std::vector<Limit>& limits, LimitId id) {
  const auto* limit = report::find(limits, id);
  if (limit == nullptr) return {"–", Tone::muted, false, State::holds};
  return judged(report::kept_together(report::in_hand(limit->margin)), limit->state);
}

std::string sentence(const Note& note, units::System system) {
  auto text = report::filled(note, system);
  if (text.empty()) return text;
  text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  const char end = text.back();
  return end == '.' || end == ':' || end == '?' ? text : text + ".";
}

std::string under(const Fit& fit, int pairs) {
  return fmt::format("{}; {} of {} engaged", report::words_of(fit), pairs, fit.pairs);
}

const FitResult* recommended(const Dossier& dossier) {
  const auto& choice = dossier.size.choice;
  return choice && choice->recommended ? &*choice->recommended : nullptr;
}

const std::vector<JobFit>& jobs_on_fit(const Dossier& dossier) {
  static const std::vector<JobFit> none;
  const auto* best = recommended(dossier);
  return best == nullptr ? none : best->jobs;
}

const JobPlan* plan_of(const Dossier& dossier, const std::string& job) {
  if (!dossier.plan.plan) return nullptr;
  const auto& jobs = dossier.plan.plan->jobs;
  const auto found = std::find_if(jobs.begin(), jobs.end(), [&](const JobPlan& each) { return each.job == job; });
  return found == jobs.end() ? nullptr : &*found;
}

std::vector<const Choice*> in_depth(const Dossier& dossier) {
  std::vector<const Choice*> out;
  for (const auto& answer : dossier.in_depth)
    if (answer.choice && answer.choice->job) out.push_back(&*answer.choice);
  return out;
}

std::string mix_in_words(std::size_t jobs) { return report::counted(static_cast<int>(jobs), "job"); }

std::vector<std::string> column_text(const std::vector<double>& si, Quantity kind, units::System system, int digits) {
  std::vector<double> numbers;
  numbers.reserve(si.size());
  for (const double value : si) {
    const double number = units::in_display_unit(value, kind, system);
    numbers.push_back(digits > 0 ? rounded(number, digits) : number);
  }
  const int decimals = digits > 0 ? decimals_of_results(numbers, digits) : decimals_of_inputs(numbers);
  std::vector<std::string> out;
  out.reserve(numbers.size());
  for (const double number : numbers) out.push_back(cell_text(number, decimals));
  return out;
}

}  // namespace holdback::papers::selection
