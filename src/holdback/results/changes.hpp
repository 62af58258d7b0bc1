// What differs between two revisions of a stand file.
#pragma once

#include <string>
#include <vector>

namespace holdback {

enum class ChangeKind { changed, added, removed };

/// One field that differs, or one thing (a job, a web, a brake) that came or went; its fields are then not listed.
struct Change {
  ChangeKind kind{};
  std::string owner{};   // the thing in words: "job \"Paper labels\""; empty for the single tables
  std::string field{};   // path: "line.normal_stop"; of a thing its table: "job"
  std::string before{};  // in the reader's units; empty when added. A default that was used says so: "6 bar (default)"
  std::string after{};   // empty when removed
};

/// In the order of the field table, things by their names.
struct Changes {
  std::vector<Change> changes{};
};

}  // namespace holdback
