#include "holdback/files/log_stamp.hpp"

#include <array>
#include <cctype>

#include "holdback/model/date.hpp"

namespace holdback::files {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Reads a stamp from left to right.
class StampReader {
 public:
  explicit StampReader(std::string_view text) : text_(text) { skip_blanks(); }

  std::optional<Stamp> read(DateOrder order) {
    Stamp stamp;
    if (opens_date()) {
      stamp.day = date(order);
      if (!stamp.day) return std::nullopt;
      if (!at_end() && !part_of_day()) return std::nullopt;
    }
    if (!at_end()) {
      if (!clock(stamp.seconds)) return std::nullopt;
      stamp.has_clock = true;
      half_of_day(stamp);
      if (!zone(stamp.seconds)) return std::nullopt;
    }
    skip_blanks();
    return at_end() && (stamp.day || stamp.has_clock) ? std::optional<Stamp>(stamp) : std::nullopt;
  }

  /// The three numbers of a date and the sign between them; nothing when there
  /// is none.
  struct Date {
    std::array<int, 3> part{};
    char sign{};
    bool year_first{};
  };
  std::optional<Date> parts() {
    Date date;
    std::size_t digits = 0;
    for (std::size_t i = 0; i < 3; ++i) {
      const auto number = whole(4, digits);
      if (!number) return std::nullopt;
      date.part[i] = *number;
      if (i == 0) date.year_first = digits == 4;
      if (i == 2) break;
      const char sign = at_end() ? ' ' : text_[at_];
      if ((sign != '-' && sign != '/' && sign != '.') || (i == 1 && sign != date.sign)) return std::nullopt;
      date.sign = sign;
      ++at_;
    }
    if (!date.year_first && digits == 2) date.part[2] += 2000;
    return date;
  }

 private:
  bool at_end() const { return at_ >= text_.size(); }
  void skip_blanks() {
    while (!at_end() && (text_[at_] == ' ' || text_[at_] == '\t')) ++at_;
  }
  bool take(char c) {
    if (at_end() || text_[at_] != c) return false;
    ++at_;
    return true;
  }

  std::optional<int> whole(std::size_t most, std::size_t& digits) {
    int number = 0;
    digits = 0;
    for (; !at_end() && is_digit(text_[at_]) && digits < most; ++at_, ++digits)
      number = 10 * number + (text_[at_] - '0');
    return digits == 0 ? std::nullopt : std::optional<int>(number);
  }

  bool opens_date() const {
    std::size_t at = at_;
    while (at < text_.size() && is_digit(text_[at])) ++at;
    return at < text_.size() && (text_[at] == '-' || text_[at] == '/' || text_[at] == '.');
  }

  std::optional<std::int64_t> date(DateOrder order) {
    const auto read = parts();
    if (!read) return std::nullopt;
    const auto& [a, b, c] = read->part;
    if (read->year_first) return day_of(CivilDate{a, b, c});
    if (read->sign == '.') return day_of(CivilDate{c, b, a});
    if (order == DateOrder::unknown) return std::nullopt;
    return order == DateOrder::day_first ? day_of(CivilDate{c, b, a}) : day_of(CivilDate{c, a, b});
  }

  /// What parts date and time: "T" or blanks; blanks may also end the stamp.
  bool part_of_day() {
    if (take('T') || take('t')) return !at_end();
    const std::size_t before = at_;
    skip_blanks();
    return at_ > before;
  }

  bool clock(double& seconds) {
    std::size_t digits = 0;
    const auto hours = whole(2, digits);
    if (!hours || !take(':')) return false;
    const auto minutes = whole(2, digits);
    if (!minutes || digits != 2) return false;
    double second = 0;
    if (take(':')) {
      const auto whole_seconds = whole(2, digits);
      if (!whole_seconds || digits != 2) return false;
      second = *whole_seconds;
      if (take('.') || take(',') || take(':')) second += fraction();
    }
    if (*hours > 24 || *minutes > 59 || second >= 61) return false;
    seconds = 3600.0 * *hours + 60.0 * *minutes + second;
    return true;
  }

  double fraction() {
    double number = 0;
    double size = 1;
    for (; !at_end() && is_digit(text_[at_]); ++at_)
      if (size < 1e15) {
        number = 10 * number + (text_[at_] - '0');
        size *= 10;
      }
    return number / size;
  }

  /// "AM" and "PM".
  void half_of_day(Stamp& stamp) {
    const std::size_t before = at_;
    skip_blanks();
    const auto letter = [&](std::size_t i) {
      return i < text_.size() ? std::toupper(static_cast<unsigned char>(text_[i])) : 0;
    };
    const int half = letter(at_);
    if ((half != 'A' && half != 'P') || letter(at_ + 1) != 'M') {
      at_ = before;
      return;
    }
    at_ += 2;
    const bool twelve = stamp.seconds >= 12 * 3600 && stamp.seconds < 13 * 3600;
    if (half == 'A' && twelve) stamp.seconds -= 12 * 3600;
    if (half == 'P' && !twelve) stamp.seconds += 12 * 3600;
  }

  /// "Z", "UTC", "+01:00", "-0530": what the clock shows less this is universal
  /// time.
  bool zone(double& seconds) {
    skip_blanks();
    if (at_end() || take('Z') || take('z')) return true;
    if (text_.substr(at_) == "UTC") {
      at_ += 3;
      return true;
    }
    const bool east = text_[at_] == '+';
    if (!east && text_[at_] != '-') return false;
    ++at_;
    std::size_t digits = 0;
    const auto hours = whole(2, digits);
    if (!hours || digits != 2) return false;
    take(':');
    const auto minutes = whole(2, digits);
    if ((digits != 0 && digits != 2) || *hours > 14) return false;
    const double offset = 3600.0 * *hours + 60.0 * minutes.value_or(0);
    seconds -= east ? offset : -offset;
    return true;
  }

  std::string_view text_;
  std::size_t at_{};
};

}  // namespace

std::optional<Stamp> read_stamp(std::string_view text, DateOrder order) { return StampReader(text).read(order); }

DateOrder order_shown(std::string_view text) {
  const auto date = StampReader(text).parts();
  if (!date || date->year_first || date->sign == '.') return DateOrder::unknown;
  if (date->part[0] > 12) return DateOrder::day_first;
  return date->part[1] > 12 ? DateOrder::month_first : DateOrder::unknown;
}

bool looks_like_stamp(std::string_view text) {
  return read_stamp(text, DateOrder::day_first).has_value() || read_stamp(text, DateOrder::month_first).has_value();
}

}  // namespace holdback::files
