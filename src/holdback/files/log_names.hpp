// What people and recorders call the columns of a log, by common practice:
// which channel a cell of a head means.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/model/log.hpp"

namespace holdback::files {

/// What a cell of a head means.
struct LogMeaning {
  enum class What { channel, date, row_number };
  What what{What::channel};  // row_number and date belong to the time
  LogChannel channel{};
  int rank{};          // 0: the channel's own word; 1: another name of it; 2: such a
                       // name among words without meaning
  std::string unit{};  // as the channel takes it, or as written when it does not
  bool unit_fits{true};
  bool per_width{};  // a tension per width
  double more{1};    // that the channel is times larger: 2 for a radius
  bool key{};        // the name is the channel's own word
};

/// Nothing when the cell names no channel. `unit_below` is the unit that a row
/// below the head gives; may be empty.
std::optional<LogMeaning> log_meaning_of(const std::string& cell, const std::string& unit_below = "");

/// The word of a channel: "tension".
const std::string& word_of(LogChannel channel);

/// All of them, in order.
const std::vector<std::string>& channel_words();

/// The kind of quantity whose units a channel's column takes.
Quantity kind_of_cells(LogChannel channel, bool per_width);

/// The unit as the channel takes it: as written, in small letters, with a slash
/// for "_" ("m_min"), "C" as degC. Nothing when it takes no such unit. A unit
/// of tension per width sets `per_width`.
std::optional<std::string> unit_for(LogChannel channel, const std::string& unit, bool& per_width);

/// True for a cell that holds a unit alone, with or without brackets, or a
/// pattern of a time such as "hh:mm:ss".
bool is_log_unit(const std::string& cell);

}  // namespace holdback::files
