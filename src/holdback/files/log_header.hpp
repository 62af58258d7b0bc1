// The beginning of a log: where its head stands, what the head names, how the
// rows below it are written.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "holdback/files/log_plan.hpp"

namespace holdback::files {

/// What the user tells beside the log.
struct HeadOptions {
  std::string columns{};                    // of --columns
  std::optional<double> rows_per_second{};  // of --rate
  std::optional<double> width{};            // [m]
};

/// Finds the head of a log in its first bytes and plans the reading of the
/// rest. `ends`: these bytes are all of it.
LogHead read_log_head(std::string_view bytes, bool ends, const std::string& file, const HeadOptions& options);

}  // namespace holdback::files
