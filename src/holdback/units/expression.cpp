#include "holdback/units/expression.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "holdback/units/digits.hpp"
#include "holdback/units/near_miss.hpp"
#include "holdback/units/text.hpp"
#include "holdback/units/unit_table.hpp"

namespace holdback::units {
namespace {

constexpr int deepest = 16;        // brackets inside brackets: enough for any unit, and no stack for garbage to fill
constexpr int highest_power = 9;   // of one unit
constexpr int highest_total = 30;  // of one dimension, so that powers of powers cannot overflow

bool is_ascii_letter(char32_t c) { return (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z'); }
bool is_ascii_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
bool is_times_sign(char32_t c) { return c == U'*' || c == U'.' || c == 0xB7 || c == 0x22C5 || c == 0xD7; }
// Marks that are a whole name: per cent, inch, foot, and # (which gets a hint). A digit after them is no power.
bool is_mark(char32_t c) { return c == U'%' || c == U'"' || c == U'\'' || c == U'#' || c == 0x2032 || c == 0x2033; }

constexpr char32_t superscript_minus = 0x207B;

std::optional<int> superscript_digit(char32_t c) {
  if (c == 0xB9) return 1;
  if (c == 0xB2) return 2;
  if (c == 0xB3) return 3;
  if (c == 0x2070 || (c >= 0x2074 && c <= 0x2079)) return static_cast<int>(c - 0x2070);
  return std::nullopt;
}

// Letters of a name. Beyond ASCII everything counts that is no sign of the grammar, so that an unknown name is cited
// whole.
bool is_name_letter(char32_t c) {
  if (c < 0x80) return is_ascii_letter(c);
  return !is_space(c) && !is_times_sign(c) && !is_mark(c) && !superscript_digit(c) && c != superscript_minus;
}

Measure product_of(const Measure& a, const Measure& b) { return {a.factor * b.factor, a.dimension * b.dimension, {}}; }
Measure quotient_of(const Measure& a, const Measure& b) { return {a.factor / b.factor, a.dimension / b.dimension, {}}; }

Measure power_of(const Measure& base, int power) {
  Measure out;
  for (int i = 0; i < std::abs(power); ++i) out = power > 0 ? product_of(out, base) : quotient_of(out, base);
  return out;
}

bool is_sane(const Measure& m) {
  const auto& p = m.dimension.powers;
  const bool low = std::all_of(p.begin(), p.end(), [](int power) { return std::abs(power) <= highest_total; });
  const double size = m.factor.numerator / m.factor.denominator;
  return low && std::isfinite(m.factor.numerator) && std::isfinite(m.factor.denominator) && std::isfinite(size) &&
         size > 0;
}

// One recursive descent over one text. The first fault is kept; after it every step answers nothing.
//   product = factor { (times | "/" | space) factor }     quotients may also open the text: "/K"
//   factor  = number [ unit ] | unit
//   unit    = [ "sq" | "cu" ] name [ power ] | "(" product ")" [ power ]
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  std::variant<Expression, Unreadable> run() {
    auto measure = starts_with_quotient() ? std::optional<Measure>{Measure{}} : factor(0);
    measure = rest_of_product(measure, 0);
    if (measure && at_ < text_.size()) measure = fail_here();
    if (!measure) return Unreadable{fault_};
    return Expression{*measure, std::move(symbols_)};
  }

 private:
  char32_t peek() const { return code_point_at(text_, at_).value; }
  void advance() { at_ += code_point_at(text_, at_).size; }
  bool at_end() const { return at_ >= text_.size(); }

  bool skip_spaces() {
    const auto from = at_;
    while (!at_end() && is_space(peek())) advance();
    return at_ > from;
  }

  bool take(char32_t c) {
    if (peek() != c || at_end()) return false;
    advance();
    return true;
  }

  std::nullopt_t fail(std::string what) {
    if (fault_.empty()) fault_ = std::move(what);
    return std::nullopt;
  }

  std::nullopt_t fail_here() {
    if (at_end()) return fail(fmt::format("{} stops where a unit should follow", quoted(text_)));
    if (peek() == U',')
      return fail(fmt::format("the comma in {} could part thousands or decimals; write no comma", quoted(text_)));
    return fail(fmt::format("the unit {} cannot be read from {} on", quoted(text_), quoted(text_.substr(at_))));
  }

  bool starts_with_quotient() {
    skip_spaces();
    return peek() == U'/';
  }

  bool at_name() const { return !at_end() && (is_name_letter(peek()) || is_mark(peek())); }
  bool at_unit() const { return at_name() || peek() == U'('; }

  std::optional<Measure> product(int depth) { return rest_of_product(factor(depth), depth); }

  std::optional<Measure> rest_of_product(std::optional<Measure> left, int depth) {
    while (left) {
      const bool spaced = skip_spaces();
      if (at_end() || peek() == U')') break;
      if (take(U'/')) {
        left = combined(*left, quotient_of, factor(depth));
      } else if (take_times(spaced)) {
        left = combined(*left, product_of, factor(depth));
      } else {
        left = fail_here();
      }
    }
    return left;
  }

  std::optional<Measure> combined(const Measure& left, Measure (*join)(const Measure&, const Measure&),
                                  const std::optional<Measure>& right) {
    if (!right) return std::nullopt;
    return checked(join(left, *right));
  }

  std::optional<Measure> checked(const Measure& measure) {
    if (!is_sane(measure)) return fail(fmt::format("the unit {} is beyond all bounds", quoted(text_)));
    return measure;
  }

  // A sign of multiplication, or a space or bracket that stands for one. Not before a number: "ft 2" is likelier a
  // power gone astray than twice a foot.
  bool take_times(bool spaced) {
    if (is_times_sign(peek())) {
      advance();
      return true;
    }
    if (peek() == U'-') return take_hyphen();
    return at_unit() && (spaced || peek() == U'(' || text_[at_ - 1] == ')');
  }

  // "in-lbf": a hyphen joins two names.
  bool take_hyphen() {
    const auto from = at_;
    advance();
    skip_spaces();
    if (at_name()) return true;
    at_ = from;
    return false;
  }

  // A number clings to the unit that follows it. So "40 lb/3000 ft2" is 40 lb per (3000 ft2), the way every basis
  // weight of the trade is written, and not (40 lb/3000)·ft2. An explicit sign, as in "lb/3000*ft2", lets go of it.
  std::optional<Measure> factor(int depth) {
    skip_spaces();
    if (at_unit()) return unit(depth);
    const auto number = scan_number(text_.substr(at_));
    if (!number) return fail_here();
    if (!number->in_range || number->value == 0) {
      return fail(fmt::format("{} cannot be a factor in a unit", quoted(text_.substr(at_, number->size))));
    }
    at_ += number->size;
    const Measure multiple{Factor{number->value}, plain, {}};
    const auto from = at_;
    skip_spaces();
    if (at_unit()) return combined(multiple, product_of, unit(depth));
    at_ = from;
    return multiple;
  }

  std::optional<Measure> unit(int depth) {
    if (peek() == U'(') return bracket(depth);
    const bool mark = is_mark(peek());
    auto measure = named();
    if (!measure) return std::nullopt;
    return mark && is_ascii_digit(peek()) ? fail_here() : raised(*measure);
  }

  std::optional<Measure> bracket(int depth) {
    if (depth >= deepest) return fail(fmt::format("{} has too many brackets inside each other", quoted(text_)));
    advance();
    const auto inner = product(depth + 1);
    if (!inner) return std::nullopt;
    if (!take(U')')) return fail(fmt::format("a bracket in {} is not closed", quoted(text_)));
    return raised(*inner);
  }

  std::optional<Measure> named() {
    const auto name = take_name();
    if (name == "sq" || name == "cu") return spelled_power(name == "sq" ? 2 : 3);
    const Unit* unit = find_unit(name);
    if (unit == nullptr) return fail(unknown_unit(name));
    symbols_.push_back(unit->symbol);
    return Measure{unit->factor, unit->dimension, unit->offset};
  }

  // "sq ft", "cu in"; a further "sq" would only be garbage.
  std::optional<Measure> spelled_power(int power) {
    skip_spaces();
    const Unit* unit = at_name() ? find_unit(take_name()) : nullptr;
    if (unit == nullptr) return fail(fmt::format("{} needs a known unit after 'sq' or 'cu'", quoted(text_)));
    symbols_.push_back(unit->symbol);
    return checked(power_of({unit->factor, unit->dimension, {}}, power));
  }

  // The longest name at this place. A digit inside a name ("inH2O") counts only if the table knows that name; otherwise
  // it is a power ("ft2").
  std::string_view take_name() {
    const auto from = at_;
    if (is_mark(peek())) {
      advance();
      return text_.substr(from, at_ - from);
    }
    while (!at_end() && is_name_letter(peek())) advance();
    const auto letters = at_;
    while (!at_end() && (is_name_letter(peek()) || is_ascii_digit(peek()))) advance();
    if (find_unit(text_.substr(from, at_ - from)) == nullptr) at_ = letters;
    return text_.substr(from, at_ - from);
  }

  std::optional<Measure> raised(const Measure& base) {
    const auto power = take_power();
    if (!power) return std::nullopt;
    if (*power == 1) return base;
    return checked(power_of(base, *power));
  }

  // 1 if no power is written; nothing if one is written badly.
  std::optional<int> take_power() {
    if (superscript_digit(peek()) || peek() == superscript_minus) return superscript_power();
    const bool caret = take(U'^');
    const auto from = at_;
    const bool negative = take(U'-');
    if (!is_ascii_digit(peek())) {
      if (caret) return fail_here();
      at_ = from;  // the hyphen was a product
      return 1;
    }
    int power = 0;
    for (; is_ascii_digit(peek()) && power <= highest_power; advance()) {
      power = 10 * power + static_cast<int>(peek() - U'0');
    }
    return bounded_power(negative ? -power : power);
  }

  std::optional<int> superscript_power() {
    const bool negative = take(superscript_minus);
    int power = 0;
    for (; superscript_digit(peek()) && power <= highest_power; advance()) {
      power = 10 * power + *superscript_digit(peek());
    }
    return bounded_power(negative ? -power : power);
  }

  std::optional<int> bounded_power(int power) {
    if (power != 0 && std::abs(power) <= highest_power) return power;
    return fail(fmt::format("{} has a power that is 0 or above {}", quoted(text_), highest_power));
  }

  std::string_view text_;
  std::size_t at_{0};
  std::string fault_;
  std::vector<std::string_view> symbols_;
};

}  // namespace

std::variant<Expression, Unreadable> read_expression(std::string_view text) { return Reader(text).run(); }

std::optional<double> to_si(double value, const Measure& measure, double offset) {
  const double scaled = value * measure.factor.numerator / measure.factor.denominator;
  const double si = scaled + offset;
  const bool vanished = scaled == 0 && value != 0;
  if (!std::isfinite(si) || vanished) return std::nullopt;
  return si;
}

double from_si(double si, const Measure& measure, double offset) {
  return (si - offset) * measure.factor.denominator / measure.factor.numerator;
}

}  // namespace holdback::units
