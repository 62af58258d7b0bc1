// Stamps of a log: dates and clock times as recorders write them.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace holdback::files {

/// In which order a date such as 03/04/2026 has day and month. Year first and
/// points between are clear by themselves.
enum class DateOrder { unknown, day_first, month_first };

/// A stamp, taken apart.
struct Stamp {
  std::optional<std::int64_t> day{};  // from 1970-01-01; none when the stamp is a time of day alone
  double seconds{};                   // [s] of that day; a zone makes it less than 0 or more than
                                      // 86,400
  bool has_clock{};                   // false for a date alone
};

/// "2026-03-01T06:00:00.250+01:00", "2026/03/01 06:00", "01.03.2026
/// 06:00:00,250", "3/1/2026 6:00:00 AM", "06:00:00.250", "2026-03-01". Of the
/// seconds the fraction may follow a point, a comma or a colon. Nothing when
/// the text is no stamp, or when its order of day and month is not known.
std::optional<Stamp> read_stamp(std::string_view text, DateOrder order);

/// What a date with slashes or hyphens shows of its order: a part above 12 is
/// the day. `unknown` when it shows nothing.
DateOrder order_shown(std::string_view text);

/// True for a text that is a time or a date by its form, whatever the order.
bool looks_like_stamp(std::string_view text);

}  // namespace holdback::files
