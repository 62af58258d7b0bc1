#include "holdback/model/history.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "holdback/model/date.hpp"

namespace holdback {

namespace {

constexpr std::array<std::string_view, 6> words{"reading", "pads", "wear", "energy", "fit", "note"};
constexpr double usual_resolution = 1e-4;  // [m]
constexpr std::size_t most_pads = 500;     // of one stand

Problem problem_at(const HistoryEntry& entry, const std::string& field, Note what, Note accepted,
                   Severity severity = Severity::error) {
  Problem problem;
  problem.severity = severity;
  problem.what = std::move(what);
  problem.field = name_of(entry) + ", " + field;
  problem.accepted = std::move(accepted);
  return problem;
}

/// Numbers that stand twice, corrections that lead nowhere, dates that stand the wrong way round.
class Checker {
 public:
  explicit Checker(const std::vector<HistoryEntry>& entries) : entries_(entries) {
    for (const HistoryEntry& entry : entries) by_number_.emplace(entry.number, &entry);
  }

  Problems check() {
    for (const HistoryEntry& entry : entries_) {
      number(entry);
      correction(entry);
      since(entry);
    }
    growth();
    pads();
    return std::move(problems_);
  }

 private:
  void number(const HistoryEntry& entry) {
    if (by_number_[entry.number] != &entry)
      problems_.push_back(problem_at(entry, "number", {"the number stands a second time"}, {"each number once"}));
  }

  void correction(const HistoryEntry& entry) {
    if (entry.corrects == 0) return;
    const std::string value = std::to_string(entry.corrects);
    const auto tell = [&](const std::string& what, const std::string& accepted) {
      problems_.push_back(problem_at(entry, "corrects", {what}, {accepted}));
      problems_.back().value = value;
    };
    const auto found = by_number_.find(entry.corrects);
    if (found == by_number_.end() || found->second->stand != entry.stand || entry.corrects >= entry.number)
      return tell("there is no earlier entry of that number for this stand",
                  "the number of an entry as `history show` lists it");
    if (!corrected_.insert(entry.corrects).second)
      tell("that entry has been corrected already", "the number of the entry that took its place");
  }

  void since(const HistoryEntry& entry) {
    if (!entry.since || *entry.since <= entry.day) return;
    problems_.push_back(problem_at(entry, "since", {"the entry counts from a day that lies behind it"},
                                   {"a date before " + date_text(entry.day)}));
    problems_.back().value = date_text(*entry.since);
  }

  /// No stand has so many pads: the names of brakes and pairs are not names.
  void pads() {
    std::map<std::string, std::set<std::string>> by_stand;
    for (const HistoryEntry& entry : entries_) {
      auto& names = by_stand[entry.stand];
      if (names.size() > most_pads || (entry.kind != EntryKind::wear && entry.kind != EntryKind::pads)) continue;
      names.insert(entry.brake + "\n" + entry.pair);
      if (names.size() > most_pads)
        problems_.push_back(problem_at(
            entry, "brake", {"the stand has more than " + std::to_string(most_pads) + " pads by its entries"},
            {"the same name for the same pad every time"}));
    }
  }

  /// A pad does not grow: a change of pads was not written down, or another pad was measured.
  void growth() {
    const auto held = in_force(entries_);
    std::map<std::string, HistoryEntry> before;
    for (const HistoryEntry& entry : held) {
      const std::string pad = entry.stand + "\n" + entry.brake + "\n" + entry.pair;
      if (entry.kind == EntryKind::pads) {
        changed(before, entry);
        if (entry.thickness || entry.depth) before.insert_or_assign(pad, entry);
      }
      if (entry.kind != EntryKind::wear) continue;
      const auto found = before.find(pad);
      if (found != before.end()) compare(found->second, entry);
      before.insert_or_assign(pad, entry);
    }
  }

  /// What a change of pads makes new: the pad that it names, else the brake, else all.
  static void changed(std::map<std::string, HistoryEntry>& before, const HistoryEntry& change) {
    for (auto at = before.begin(); at != before.end();) {
      const HistoryEntry& old = at->second;
      const bool same = old.stand == change.stand && (change.brake.empty() || old.brake == change.brake) &&
                        (change.pair.empty() || old.pair == change.pair);
      at = same ? before.erase(at) : std::next(at);
    }
  }

  void compare(const HistoryEntry& earlier, const HistoryEntry& later) {
    const double room =
        2 * std::max(earlier.resolution.value_or(usual_resolution), later.resolution.value_or(usual_resolution));
    const auto grown = [&](const std::optional<double>& from, const std::optional<double>& to, const char* key) {
      if (!from || !to || *to <= *from + room) return;
      problems_.push_back(
          problem_at(later, key,
                     {"the pad is thicker than in " + name_of(earlier) + " of " + date_text(earlier.day) +
                          ", {0} after {1}, and no change of pads stands between",
                      {{*to, Quantity::short_length}, {*from, Quantity::short_length}}},
                     {"the change as an entry `pads`, or a correction of one of the two"}, Severity::warning));
    };
    grown(earlier.depth, later.depth, "depth");
    grown(earlier.thickness, later.thickness, "thickness");
  }

  const std::vector<HistoryEntry>& entries_;
  std::map<int, const HistoryEntry*> by_number_{};
  std::set<int> corrected_{};
  Problems problems_{};
};

}  // namespace

std::string_view key_of(EntryKind kind) { return words[static_cast<std::size_t>(kind)]; }

std::optional<EntryKind> entry_kind(std::string_view word) {
  const auto found = std::find(words.begin(), words.end(), word);
  if (found == words.end()) return std::nullopt;
  return static_cast<EntryKind>(found - words.begin());
}

std::string name_of(const HistoryEntry& entry) { return "entry " + std::to_string(entry.number); }

std::string pad_of(const HistoryEntry& entry) {
  std::string text = entry.brake.empty() ? "" : "brake " + entry.brake;
  if (!entry.pair.empty()) text += (text.empty() ? "pair " : ", pair ") + entry.pair;
  return text;
}

void link_corrections(std::vector<HistoryEntry>& entries) {
  std::map<int, int> by;
  for (const HistoryEntry& entry : entries)
    if (entry.corrects != 0) by[entry.corrects] = entry.number;
  for (HistoryEntry& entry : entries) {
    const auto found = by.find(entry.number);
    entry.corrected_by = found == by.end() ? 0 : found->second;
  }
}

std::vector<HistoryEntry> in_force(std::vector<HistoryEntry> entries) {
  link_corrections(entries);
  entries.erase(
      std::remove_if(entries.begin(), entries.end(), [](const HistoryEntry& entry) { return entry.corrected_by != 0; }),
      entries.end());
  std::stable_sort(entries.begin(), entries.end(), [](const HistoryEntry& a, const HistoryEntry& b) {
    return a.day != b.day ? a.day < b.day : a.number < b.number;
  });
  return entries;
}

Problems problems_of(const std::vector<HistoryEntry>& entries) { return Checker(entries).check(); }

}  // namespace holdback
