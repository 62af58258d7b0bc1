// The file in which histories are kept: an SQLite database of its own form, versioned, that only ever grows.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "holdback/model/history.hpp"
#include "sqlite.hpp"

namespace holdback::cli {

/// The version that this program writes; older files are brought up to it, newer ones are refused.
inline constexpr int history_version = 2;

/// Why a file is not opened, or an entry not kept; the file is as it was.
struct StoreFault {
  Problem problem{};
};

/// An open history. Every access is one transaction: another program that adds at the same time waits, and one that is
/// killed leaves the file as it was before its entry. Throws StoreFault.
class HistoryStore {
 public:
  enum class For { reading, adding };

  /// Opens and checks: a file of another kind, of a newer version or damaged is refused. For adding, a file that is not
  /// there (or has no bytes) becomes a new history with the first entry.
  HistoryStore(const std::string& path, For purpose);

  /// All entries, by number.
  std::vector<HistoryEntry> entries();

  /// Keeps an entry under the next number, unless `judge`, who sees all entries with it, finds an error. Answers with
  /// what the judge found; the number is set in `entry`.
  Problems add(HistoryEntry& entry, const std::function<Problems(const std::vector<HistoryEntry>&)>& judge);

 private:
  enum class State { fresh, ours };
  State examine();
  void bring_up_to_date(State state);
  std::vector<HistoryEntry> read();
  void write(const HistoryEntry& entry);
  long long pragma(const char* statement);
  [[noreturn]] void refuse(const std::string& what, const std::string& accepted) const;
  [[noreturn]] void refuse(const sqlite::Fault& fault) const;

  std::string path_;
  sqlite::Connection connection_;
};

}  // namespace holdback::cli
