#include "xlsx_write.hpp"

#include <fmt/format.h>
#include <unistd.h>
#include <xlsxwriter.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "holdback/draw/cells.hpp"
#include "holdback/report/phrase.hpp"
#include "holdback/report/words.hpp"
#include "settings.hpp"

namespace holdback::cli {

namespace {

namespace fs = std::filesystem;
using report::JobsTable;
using units::System;

constexpr std::size_t most_rows = 1'048'576;  // of a sheet, by the file format
constexpr time_t made = 946'684'800;          // 2000-01-01: the time of writing would make equal answers unequal
constexpr int most_decimals = 6;

void check(lxw_error error) {
  if (error != LXW_NO_ERROR) throw Refusal(std::string("the workbook cannot be written: ") + lxw_strerror(error));
}

/// A file of our own in the folder for such, taken away at the end.
class Temporary {
 public:
  Temporary() {
    std::error_code none;
    path_ = (fs::temp_directory_path(none) / "holdback-XXXXXX").string();
    const int file = ::mkstemp(path_.data());
    if (file < 0) throw Refusal("the workbook cannot be written: no temporary file can be made, see TMPDIR");
    ::close(file);
  }
  ~Temporary() { ::unlink(path_.c_str()); }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;
  const std::string& path() const { return path_; }

  std::string content() const {
    std::ifstream file(path_, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }

 private:
  std::string path_{};
};

/// Decimals that show four digits of the number; none for whole numbers that have as many.
int decimals_of(double value) {
  if (value == 0 || !std::isfinite(value)) return 0;
  return std::clamp(3 - static_cast<int>(std::floor(std::log10(std::abs(value)))), 0, most_decimals);
}

/// Decimals of a column: those of its largest number; none when all are whole.
int decimals_of(const JobsTable& table, std::size_t column) {
  double largest = 0;
  bool whole = true;
  for (const auto& row : table.rows) {
    if (column >= row.size() || !row[column].number) continue;
    largest = std::max(largest, std::abs(*row[column].number));
    whole = whole && *row[column].number == std::floor(*row[column].number);
  }
  return whole ? 0 : decimals_of(largest);
}

/// A workbook that is being filled. The library's handles are all its own.
class Book {
 public:
  explicit Book(const std::string& title) : book_(workbook_new(file_.path().c_str())) {
    if (book_ == nullptr) throw Refusal("the workbook cannot be written: there is no memory for it");
    lxw_doc_properties about{};
    std::string text = title;
    about.title = text.data();
    about.created = made;
    check(workbook_set_properties(book_, &about));
    bold_ = workbook_add_format(book_);
    format_set_bold(bold_);
    head_ = workbook_add_format(book_);
    format_set_bold(head_);
    format_set_text_wrap(head_);
    format_set_align(head_, LXW_ALIGN_VERTICAL_TOP);
    wrapped_ = workbook_add_format(book_);
    format_set_text_wrap(wrapped_);
    format_set_align(wrapped_, LXW_ALIGN_VERTICAL_TOP);
    for (int decimals = 0; decimals <= most_decimals; ++decimals) {
      numbers_.push_back(workbook_add_format(book_));
      format_set_num_format(
          numbers_.back(), decimals == 0 ? "0" : ("0." + std::string(static_cast<std::size_t>(decimals), '0')).c_str());
    }
  }
  ~Book() {
    if (book_ != nullptr) lxw_workbook_free(book_);
  }
  Book(const Book&) = delete;
  Book& operator=(const Book&) = delete;

  /// A table: bold heads that stay in view, a filter, columns as wide as their texts. `mixed` columns hold numbers of
  /// several kinds, each with decimals of its own.
  void table(const std::string& name, const JobsTable& table, bool mixed = false) {
    if (table.rows.size() >= most_rows)
      throw Refusal(fmt::format("the table has {} rows, and a sheet takes {}; write it with --csv", table.rows.size(),
                                most_rows - 1));
    lxw_worksheet* sheet = add_sheet(name);
    for (std::size_t column = 0; column < table.heads.size(); ++column) write_column(sheet, table, column, mixed);
    if (table.heads.empty()) return;
    worksheet_freeze_panes(sheet, 1, 1);
    check(worksheet_autofilter(sheet, 0, 0, static_cast<lxw_row_t>(table.rows.size()),
                               static_cast<lxw_col_t>(table.heads.size() - 1)));
  }

  /// Label and text, side by side.
  void facts(const std::string& name, const std::vector<report::Fact>& facts) {
    lxw_worksheet* sheet = add_sheet(name);
    check(worksheet_set_column(sheet, 0, 0, 16, nullptr));
    check(worksheet_set_column(sheet, 1, 1, 110, nullptr));
    lxw_row_t row = 0;
    for (const auto& fact : facts) {
      check(worksheet_write_string(sheet, row, 0, fact.label.c_str(), head_));
      check(worksheet_write_string(sheet, row, 1, fact.value.c_str(), wrapped_));
      ++row;
    }
  }

  std::string bytes() {
    lxw_workbook* done = book_;
    book_ = nullptr;  // closing gives it back, also when it fails
    check(workbook_close(done));
    return file_.content();
  }

 private:
  lxw_worksheet* add_sheet(const std::string& name) {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, name.c_str());
    if (sheet == nullptr) throw std::logic_error("no sheet \"" + name + "\" can be added");
    return sheet;
  }

  void write_column(lxw_worksheet* sheet, const JobsTable& table, std::size_t column, bool mixed) {
    const auto at = static_cast<lxw_col_t>(column);
    const int decimals = decimals_of(table, column);
    int width = draw::columns(table.heads[column]) + 3;  // and the mark of the filter
    check(worksheet_write_string(sheet, 0, at, table.heads[column].c_str(), bold_));
    lxw_row_t row = 0;
    for (const auto& cells : table.rows) {
      ++row;
      if (column >= cells.size()) continue;
      const auto& cell = cells[column];
      width = std::max(width, draw::columns(cell.text) + 1);
      if (cell.number)
        check(worksheet_write_number(sheet, row, at, *cell.number,
                                     number_format(mixed ? decimals_of(*cell.number) : decimals)));
      else if (!cell.text.empty())
        check(worksheet_write_string(sheet, row, at, cell.text.c_str(), nullptr));
    }
    check(worksheet_set_column(sheet, at, at, std::clamp(width, 8, 60), nullptr));
  }

  lxw_format* number_format(int decimals) const { return numbers_[static_cast<std::size_t>(decimals)]; }

  Temporary file_{};
  lxw_workbook* book_;
  lxw_format* bold_{};
  lxw_format* head_{};
  lxw_format* wrapped_{};
  std::vector<lxw_format*> numbers_{};
};

// ---- what the sheets hold -------------------------------------------------------------------------------------------

void add_limits(JobsTable& table, const JobFit& job, System system) {
  for (const Limit& limit : job.limits) {
    const LimitInfo& about = info(limit.id);
    const auto shown = [&](double value) {
      return JobsTable::Cell{"", units::in_display_unit(value, about.kind, system)};
    };
    JobsTable::Cell diameter;
    if (limit.diameter > 0) diameter.number = units::in_display_unit(limit.diameter, Quantity::short_length, system);
    table.rows.push_back({{job.job, {}},
                          {std::string(about.name), {}},
                          shown(limit.value),
                          {about.sense == Sense::at_most ? "at most" : "at least", {}},
                          shown(limit.bound),
                          {units::unit_of(about.kind, system), {}},
                          {"", limit.margin},
                          diameter,
                          {std::string(name_of(limit.load_case)), {}},
                          {std::string(key_of(limit.state)), {}}});
  }
}

/// One row for each limit of each job on the recommended fit, or of the one job that was asked for.
JobsTable limits_table(const Choice& choice, System system) {
  JobsTable table;
  table.heads = {"job",   "limit", "value",  "must be",
                 "bound", "unit",  "margin", "diameter [" + units::unit_of(Quantity::short_length, system) + "]",
                 "case",  "state"};
  if (choice.job)
    add_limits(table, *choice.job, system);
  else if (choice.recommended)
    for (const JobFit& job : choice.recommended->jobs) add_limits(table, job, system);
  return table;
}

using Facts = std::vector<report::Fact>;

/// Notes one below the other, the label beside the first.
void add_notes(Facts& facts, const std::string& label, const std::vector<Note>& notes, System system) {
  for (std::size_t i = 0; i < notes.size(); ++i) facts.push_back({i == 0 ? label : "", units::fill(notes[i], system)});
}

void add_choice(Facts& facts, const Choice& choice, System system) {
  facts.push_back({"stand", choice.title});
  if (choice.recommended) {
    const FitResult& best = *choice.recommended;
    facts.push_back({"fit", report::words_of(best.fit)});
    facts.push_back({"jobs covered", fmt::format("{} of {}", best.covered, best.jobs.size())});
    facts.push_back({"why", units::fill(choice.why, system)});
  }
  for (std::size_t i = 0; i < choice.uncovered.size(); ++i)
    facts.push_back(
        {i == 0 ? "falls out" : "", choice.uncovered[i].job + ": " + units::fill(choice.uncovered[i].why, system)});
  add_notes(facts, "assumptions", choice.assumptions, system);
  add_notes(facts, "cautions", choice.cautions, system);
}

void add_plan(Facts& facts, const Plan& plan, System system) {
  facts.push_back({"stand", plan.title});
  facts.push_back({"fit", report::words_of(plan.fit)});
  add_notes(facts, "assumptions", plan.assumptions, system);
  add_notes(facts, "cautions", plan.cautions, system);
}

void add_check(Facts& facts, const Check& check, System system) {
  facts.push_back({"stand", check.title});
  facts.push_back({"read", fmt::format("{}, {}, {}, {}", report::counted(static_cast<int>(check.jobs.size()), "job"),
                                       report::counted(check.webs, "web"), report::counted(check.rolls, "roll"),
                                       report::counted(check.brakes, "brake"))});
  add_notes(facts, "cautions", check.cautions, system);
}

Facts facts_of(const Answer& answer, System system) {
  Facts facts{{"command", answer.command}, {"outcome", std::string(report::key_of(answer.outcome))}};
  if (answer.choice) add_choice(facts, *answer.choice, system);
  if (answer.plan) add_plan(facts, *answer.plan, system);
  if (answer.check) add_check(facts, *answer.check, system);
  for (std::size_t i = 0; i < answer.defaults.size(); ++i) {
    const DefaultUsed& used = answer.defaults[i];
    facts.push_back({i == 0 ? "defaults used" : "",
                     used.field + (used.owner.empty() ? "" : " (" + used.owner + ")") + ": " + used.text});
  }
  for (std::size_t i = 0; i < answer.columns.size(); ++i) {
    const ColumnRead& column = answer.columns[i];
    const std::string read =
        column.field.empty() ? "not read" : column.field + (column.unit.empty() ? "" : " [" + column.unit + "]");
    facts.push_back({i == 0 ? "columns read" : "",
                     fmt::format("{} {}, \"{}\": {}", column.file, column.column, column.header, read)});
  }
  return facts;
}

}  // namespace

std::string workbook(const Answer& answer, System system) {
  Book book("holdback " + answer.command);
  book.table("Jobs", report::jobs_table(answer, system));
  if (answer.choice) book.table("Limits", limits_table(*answer.choice, system), true);
  book.facts("Answer", facts_of(answer, system));
  return book.bytes();
}

std::string workbook(const JobsTable& table, const std::string& name) {
  Book book(name);
  book.table("Jobs", table);
  return book.bytes();
}

}  // namespace holdback::cli
