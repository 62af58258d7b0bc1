#include "holdback/files/log_header.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "holdback/files/log_assign.hpp"
#include "holdback/files/log_cells.hpp"
#include "holdback/files/log_columns.hpp"
#include "holdback/files/log_names.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"

namespace holdback::files {
namespace {

constexpr std::size_t most_lines = 400;     // that are looked at
constexpr std::size_t most_above_rows = 6;  // lines between the head and the first row of numbers
constexpr std::size_t most_rows_looked_at = 200;

bool blank(const std::vector<Cell>& cells) {
  return std::all_of(cells.begin(), cells.end(), [](const Cell& cell) { return cell.text.empty(); });
}

bool is_value(const std::string& cell) {
  return is_number(cell, '.') || is_number(cell, ',') || looks_like_stamp(cell);
}

/// A row of readings: values, and cells without one; at least one value. Texts
/// in columns that are not read may stand among them, but not more than there
/// are values.
bool is_row_of_values(const std::vector<Cell>& cells) {
  std::size_t values = 0;
  std::size_t texts = 0;
  for (const Cell& cell : cells) {
    if (is_no_reading(cell.text)) continue;
    ++(is_value(cell.text) ? values : texts);
  }
  return values > 0 && texts <= values;
}

/// A place where the head may be.
struct Candidate {
  std::size_t line{};  // index of it
  char delimiter{};
  int score{};                       // channels that its cells name
  std::size_t rows{};                // index of the first row of values
  std::vector<std::string> units{};  // of a row below it
};

class HeadFinder {
 public:
  HeadFinder(std::string_view text, bool ends, const std::string& file, const HeadOptions& options)
      : lines_(first_lines(text, most_lines, ends)), file_(file), options_(options) {
    out_.problems = {};
    asked_ = read_columns_option(options.columns, out_.problems);
  }

  LogHead find() {
    if (has_errors(out_.problems)) return std::move(out_);
    const auto head = best();
    if (head) {
      understand(*head);
    } else if (const auto first = first_row_of_values(); first && !asked_.empty()) {
      understand(*first);
    } else {
      tell_no_head();
    }
    return std::move(out_);
  }

 private:
  /// How many channels a line names: by the trade's words, or as the user said.
  int score_of(const std::vector<Cell>& cells) const {
    std::array<bool, log_channels> named{};
    int others = 0;
    for (const Cell& cell : cells) {
      for (const ColumnAsked& asked : asked_)
        if (asked.number == 0 && names_cell(asked, cell.text)) named[static_cast<std::size_t>(asked.channel)] = true;
      const auto meaning = log_meaning_of(cell.text);
      if (!meaning) continue;
      if (meaning->what == LogMeaning::What::channel)
        named[static_cast<std::size_t>(meaning->channel)] = true;
      else
        others = 1;
    }
    return others + static_cast<int>(std::count(named.begin(), named.end(), true));
  }

  /// The line that names most channels and has a row of values below it.
  std::optional<Candidate> best() const {
    std::vector<Candidate> candidates;
    for (const char delimiter : {',', ';', '\t'})
      for (std::size_t i = 0; i < lines_.size(); ++i) {
        const std::vector<Cell> cells = cells_of(lines_[i], delimiter);
        const int score = score_of(cells);
        if (score > 0) candidates.push_back({i, delimiter, score, 0, {}});
      }
    std::stable_sort(candidates.begin(), candidates.end(), [](const Candidate& a, const Candidate& b) {
      return a.score != b.score ? a.score > b.score : a.line < b.line;
    });
    for (Candidate& candidate : candidates)
      if (has_rows(candidate)) return candidate;
    return std::nullopt;
  }

  /// Looks below the head: a row of units, other lines of its kind, then a row
  /// of values as wide as the head.
  bool has_rows(Candidate& head) const {
    const std::size_t width = cells_of(lines_[head.line], head.delimiter).size();
    std::size_t above = 0;
    for (std::size_t i = head.line + 1; i < lines_.size() && above <= most_above_rows; ++i) {
      const std::vector<Cell> cells = cells_of(lines_[i], head.delimiter);
      if (blank(cells)) continue;
      if (is_row_of_values(cells) && 2 * cells.size() > width) {
        head.rows = i;
        return true;
      }
      ++above;
      if (head.units.empty() && is_row_of_units(cells))
        for (const Cell& cell : cells) head.units.push_back(bare_unit(cell.text));
    }
    return false;
  }

  static bool is_row_of_units(const std::vector<Cell>& cells) {
    const auto nothing = [](const std::string& text) {
      return text.empty() || text == "-" || text == "–" || text == "1";
    };
    bool any = false;
    for (const Cell& cell : cells) {
      if (nothing(cell.text)) continue;
      if (!is_log_unit(cell.text)) return false;
      any = true;
    }
    return any;
  }

  static std::string bare_unit(const std::string& cell) {
    const bool bracketed = !cell.empty() && (cell.front() == '[' || cell.front() == '(');
    return bracketed ? cell.substr(1, cell.size() - 2) : cell;
  }

  /// A log without a head: the first row of values, by the delimiter that gives
  /// it most of them.
  std::optional<Candidate> first_row_of_values() const {
    for (std::size_t i = 0; i < lines_.size(); ++i) {
      Candidate found;
      std::size_t most = 0;
      for (const char delimiter : {';', '\t', ','}) {
        const std::vector<Cell> cells = cells_of(lines_[i], delimiter);
        if (cells.size() <= most || blank(cells) || !is_row_of_values(cells)) continue;
        found = {i, delimiter, 0, i, {}};
        most = cells.size();
      }
      if (most > 0) return found;
    }
    return std::nullopt;
  }

  void understand(const Candidate& head) {
    out_.begin = lines_[head.rows].begin;
    out_.line = lines_[head.rows].number;
    std::vector<std::vector<Cell>> rows;
    for (std::size_t i = head.rows; i < lines_.size() && rows.size() < most_rows_looked_at; ++i) {
      rows.push_back(cells_of(lines_[i], head.delimiter));
      if (blank(rows.back())) rows.pop_back();
    }
    const bool has_head = head.rows != head.line;
    LogAssignment work{out_, file_, options_, asked_, rows, {}, {}, head.units};
    out_.plan.delimiter = head.delimiter;
    if (has_head) {
      work.head = cells_of(lines_[head.line], head.delimiter);
      work.head_line = as_utf8(lines_[head.line].text);
    } else {
      for (std::size_t i = 0; i < rows.front().size(); ++i) work.head.push_back({"", {out_.line, 0}});
    }
    assign_columns(work);
  }

  void tell_no_head() {
    Problem problem;
    problem.file = file_;
    const auto row = first_row_of_values();
    const std::size_t shown = row ? row->line : 0;
    if (shown < lines_.size()) {
      problem.where = {lines_[shown].number, 1};
      problem.source_line = as_utf8(lines_[shown].text.substr(0, 200));
    }
    problem.what.text = row ? "the log has no head that names time and tension "
                              "above its numbers"
                            : "no head with rows of numbers below it is found";
    problem.accepted.text =
        "a head such as time [s],tension [N],speed [m/min],pressure [bar] and "
        "rows of numbers, parted by commas, "
        "semicolons or tabs; or --columns \"time=1 [s],tension=2 [N]\" with "
        "the numbers of the columns";
    out_.problems.push_back(std::move(problem));
  }

  std::vector<HeadLine> lines_;
  const std::string& file_;
  const HeadOptions& options_;
  std::vector<ColumnAsked> asked_{};
  LogHead out_{};
};

Problem fault_of_text(const std::string& file, std::string what, std::string accepted, int line = 0) {
  Problem problem;
  problem.file = file;
  problem.what.text = std::move(what);
  problem.accepted.text = std::move(accepted);
  problem.where = {line, line > 0 ? 1 : 0};
  return problem;
}

/// Why the bytes are no text at all.
std::optional<Problem> no_text(std::string_view bytes, const std::string& file) {
  if (bytes.substr(0, 2) == "\xFF\xFE" || bytes.substr(0, 2) == "\xFE\xFF")
    return fault_of_text(file, "the file is saved as UTF-16", "text saved as UTF-8");
  if (const std::size_t zero = bytes.find('\0'); zero != std::string_view::npos) {
    const auto line = 1 + std::count(bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(zero), '\n');
    return fault_of_text(file, "a zero byte stands in the text", "a text file; this looks like another kind of file",
                         static_cast<int>(line));
  }
  if (bytes.find_first_not_of(" \t\r\n") == std::string_view::npos)
    return fault_of_text(file, "the log is empty",
                         "a head such as time [s],tension [N],speed [m/min], "
                         "and rows of numbers");
  return std::nullopt;
}

}  // namespace

LogHead read_log_head(std::string_view bytes, bool ends, const std::string& file, const HeadOptions& options) {
  if (auto wrong = no_text(bytes, file)) {
    LogHead head;
    head.problems.push_back(std::move(*wrong));
    return head;
  }
  const std::size_t mark = bytes.size() - without_mark(bytes).size();
  LogHead head = HeadFinder(without_mark(bytes), ends, file, options).find();
  head.begin += mark;
  return head;
}

}  // namespace holdback::files
