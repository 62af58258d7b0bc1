// One job by hand: each equation bare, with its numbers, and what comes out.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>

#include "holdback/papers/report_parts.hpp"
#include "holdback/papers/sources.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/units/text.hpp"

namespace holdback::papers::selection {

namespace {

constexpr int digits_in = 5;   // of numbers put in: more than are meant, so that the result can be followed
constexpr int digits_out = 4;  // of results; an absolute temperature needs one more

int digits_of_result(Quantity kind) { return kind == Quantity::temperature ? digits_in : digits_out; }

/// "N*m/m2" as it is set: "N·m/m²".
std::string si_unit(Quantity kind) {
  const auto ascii = units::si_unit_of(kind);
  if (ascii == "1") return {};
  std::string out;
  for (const char c : ascii) {
    if (c == '*')
      out += "·";
    else if (c == '2')
      out += "²";
    else if (c == '3')
      out += "³";
    else
      out += c;
  }
  return out;
}

std::string raised(int exponent) {
  constexpr std::array<std::string_view, 10> digits{"⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹"};
  std::string out = exponent < 0 ? "⁻" : "";
  for (const char c : std::to_string(std::abs(exponent))) out += digits[static_cast<std::size_t>(c - '0')];
  return out;
}

/// Zeros at the end say nothing in a number that is only to be put in.
std::string trimmed(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

/// A number with so many digits: "0.33", "3.2·10⁹".
std::string number(double value, int digits) {
  if (value == 0) return "0";
  if (!std::isfinite(value)) return value > 0 ? "∞" : value < 0 ? "−∞" : "undefined";
  const auto sign = value < 0 ? "−" : "";
  const double size = std::abs(value);
  const auto text = fmt::format("{:.{}e}", size, digits - 1);
  const int exponent = std::stoi(text.substr(text.find('e') + 1));
  const auto mantissa = text.substr(0, text.find('e'));
  if (exponent < -3 || exponent > 5) return sign + trimmed(mantissa) + "·10" + raised(exponent);
  return sign + trimmed(fmt::format("{:.{}f}", size, std::max(digits - 1 - exponent, 0)));
}

std::string in_si(double value, Quantity kind, int digits) {
  const auto unit = si_unit(kind);
  return report::kept_together(number(value, digits) + (unit.empty() ? "" : " " + unit));
}

/// Letters of a symbol: what is no operator, digit, bracket, comma or blank. Digits may follow.
bool begins_symbol(char32_t c) {
  return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z') || c == U'_' ||
         (c > 0x7f && c != U'·' && c != U'−' && c != U'×' && c != U'\u00A0' && c != U'√');
}

bool goes_on(char32_t c) { return begins_symbol(c) || (c >= U'0' && c <= U'9') || c == U'\''; }

/// Whether what stands beside a number would bind stronger than its sign, its unit or its power of ten.
bool needs_brackets(std::string_view before, std::string_view after, const std::string& text) {
  const auto left = units::trimmed(before);
  const auto right = units::trimmed(after);
  const bool power = !right.empty() && right.front() == '^';
  const bool under = !left.empty() && (left.back() == '/' || left.back() == '^');
  const bool negative = text.rfind("−", 0) == 0;
  const bool compound = text.find('/') != std::string::npos || text.find("·") != std::string::npos;
  return power || (under && compound) || (negative && !left.empty());
}

/// The formula with the value of each term in the place of its symbol.
std::string put_in(const WorkedStep& step) {
  const std::string& formula = step.formula;
  std::string out;
  for (std::size_t at = 0; at < formula.size();) {
    const auto first = units::code_point_at(formula, at);
    auto end = at + first.size;
    if (!begins_symbol(first.value)) {
      out.append(formula, at, first.size);
      at = end;
      continue;
    }
    while (end < formula.size() && goes_on(units::code_point_at(formula, end).value))
      end += units::code_point_at(formula, end).size;
    const auto symbol = formula.substr(at, end - at);
    const auto term = std::find_if(step.terms.begin(), step.terms.end(),
                                   [&](const WorkedTerm& each) { return each.symbol == symbol; });
    if (term == step.terms.end()) {
      out += symbol;
    } else {
      const auto text = in_si(term->value, term->kind, digits_in);
      const bool brackets =
          needs_brackets(std::string_view(formula).substr(0, at), std::string_view(formula).substr(end), text);
      out += brackets ? "(" + text + ")" : text;
    }
    at = end;
  }
  return out;
}

bool same_unit(const WorkedTerm& term, units::System system) {
  return units::unit_of(term.kind, system) == si_unit(term.kind) && term.kind != Quantity::temperature;
}

/// A difference of numbers that agree to every digit that is shown.
bool vanishes(const WorkedStep& step) {
  double largest = 0;
  for (const auto& term : step.terms)
    if (si_unit(term.kind) == si_unit(step.result.kind)) largest = std::max(largest, std::abs(term.value));
  return std::abs(step.result.value) < 1e-7 * largest;
}

std::string result_of(const WorkedStep& step, units::System system) {
  const auto& term = step.result;
  if (vanishes(step)) return term.symbol + " = 0, to every digit that is meant";
  const auto si = in_si(term.value, term.kind, digits_of_result(term.kind));
  const auto reader = meant(term.value, term.kind, system);
  return term.symbol + " = " + si + (same_unit(term, system) ? "" : " = " + reader);
}

/// "M = …"; a formula that already says what it gives stays as it is.
std::string with_left(const WorkedStep& step, const std::string& right) {
  return right.find('=') != std::string::npos ? right : step.result.symbol + " = " + right;
}

std::string source_of(const std::string& source) {
  if (source.empty()) return {};
  const bool key = source.find(' ') == std::string::npos && source != "derived";
  return key ? "[" + source + "]" : source;
}

Equation equation_of(const WorkedStep& step, units::System system) {
  auto name = step.name;
  if (!name.empty()) name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
  return {std::move(name),
          step.id,
          with_left(step, step.formula),
          with_left(step, put_in(step)),
          result_of(step, system),
          source_of(step.source) + (step.source.empty() || step.note.empty() ? "" : ". ") + step.note};
}

/// A symbol as it first stands; `varies`: it stands for another value further on.
struct Symbol {
  WorkedTerm term{};
  bool varies{};
};

std::vector<Symbol> symbols(const WorkedJob& job) {
  std::vector<Symbol> out;
  const auto note = [&](const WorkedTerm& term) {
    const auto same =
        std::find_if(out.begin(), out.end(), [&](const Symbol& each) { return each.term.symbol == term.symbol; });
    if (same == out.end())
      out.push_back({term, false});
    else
      same->varies = same->varies || same->term.value != term.value;
  };
  for (const auto& step : job.steps) {
    for (const auto& term : step.terms) note(term);
    note(step.result);
  }
  return out;
}

Table symbols_table(const std::vector<Symbol>& symbols, units::System system) {
  const auto cell = [](std::string text) { return Cell{std::move(text), Tone::normal, false, State::holds}; };
  Rows<Symbol> rows(symbols, system);
  rows.text("symbol", [](const Symbol& each) { return each.term.symbol; })
      .text("meaning", [](const Symbol& each) { return each.term.name; })
      .cells({"SI", "", true},
             [=](const Symbol& each) {
               return cell(each.varies ? "each its own" : in_si(each.term.value, each.term.kind, digits_in));
             })
      .cells({"as elsewhere in this report", "", true}, [=](const Symbol& each) {
        const bool again = each.varies || same_unit(each.term, system);
        return cell(again ? std::string{} : meant(each.term.value, each.term.kind, system));
      });
  return rows.under("Symbols, in the order in which they first stand");
}

/// What the keys in brackets stand for, in the order in which they first stand.
std::vector<std::string> sources_of(const WorkedJob& job) {
  std::vector<std::string> lines;
  for (const auto& step : job.steps) {
    const auto source = source_called(step.source);
    if (!source) continue;
    std::string line = "[" + step.source + "] " + *source;
    if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace

void worked(Chapter& chapter, const Dossier& dossier) {
  if (!dossier.worked || dossier.worked->steps.empty()) return;
  const auto& job = *dossier.worked;
  chapter.say(fmt::format(
      "Job {}, in the order in which the equations build on each other. Numbers are put in in SI units without "
      "prefixes (m, kg, s, N, Pa, K, rad), so that no factor of conversion is hidden; temperatures are absolute, "
      "pressures gauge. They stand with {} digits, more than are meant, so that a pocket calculator follows; what "
      "comes "
      "out stands in SI and then in the units of this report. The name in brackets is that of the function, and of its "
      "heading in the page on the method.",
      report::named(job.job), digits_in));
  for (const auto& step : job.steps) chapter.equation(equation_of(step, chapter.system()));
  chapter.table(symbols_table(symbols(job), chapter.system()));
  chapter.heading("Sources of these equations");
  chapter.items(sources_of(job));
}

}  // namespace holdback::papers::selection
