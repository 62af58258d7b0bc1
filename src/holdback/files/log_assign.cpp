#include "holdback/files/log_assigned.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>

#include "holdback/files/header_parts.hpp"
#include "holdback/files/header_words.hpp"
#include "holdback/files/log_cells.hpp"
#include "holdback/files/log_names.hpp"
#include "holdback/files/suggest.hpp"
#include "holdback/files/text_file.hpp"
#include "holdback/units/units.hpp"

namespace holdback::files {
namespace {

using What = LogMeaning::What;

class Assigner {
 public:
  explicit Assigner(LogAssignment& work) : c_(work) {}

  void run() {
    c_.plan.cells.assign(c_.work.head.size(), {});
    find_point();
    check_widths();
    for (const ColumnAsked& asked : c_.work.asked) take_asked(asked);
    for (std::size_t i = 1; i < log_channels; ++i) take_named(static_cast<LogChannel>(i));
    if (!wide_) assign_time(c_);
    if (!c_.plan.has[static_cast<std::size_t>(LogChannel::tension)] &&
        !c_.told[static_cast<std::size_t>(LogChannel::tension)])
      tell_missing_tension();
    list_columns();
  }

 private:
  // ---- the first rows ----

  /// The decimal sign: a comma when the delimiter is another sign and numbers
  /// with a comma stand more often.
  void find_point() {
    if (c_.plan.delimiter == ',') return;
    std::size_t commas = 0;
    std::size_t points = 0;
    for (const auto& row : c_.work.rows)
      for (const Cell& cell : row) {
        commas += cell.text.find(',') != std::string::npos && is_number(cell.text, ',') ? 1U : 0U;
        points += cell.text.find('.') != std::string::npos && is_number(cell.text, '.') ? 1U : 0U;
      }
    if (commas > points) c_.plan.point = ',';
  }

  /// "12,5,80,0" below "tension,speed": a comma cannot part both cells and
  /// decimals.
  void check_widths() {
    if (c_.plan.delimiter != ',') return;
    const auto filled = [](const std::vector<Cell>& row) {
      std::size_t last = 0;
      for (std::size_t i = 0; i < row.size(); ++i)
        if (!row[i].text.empty()) last = i + 1;
      return last;
    };
    std::size_t wider = 0;
    for (const auto& row : c_.work.rows) wider += filled(row) > c_.work.head.size() ? 1U : 0U;
    if (2 * wider <= c_.work.rows.size()) return;
    Problem problem;
    problem.file = c_.work.file;
    problem.where = {c_.work.out.line, 1};
    problem.what.text =
        fmt::format("the rows have {} cells, and the head has {}", filled(c_.work.rows.front()), c_.work.head.size());
    problem.accepted.text =
        "as many cells as the head; with a comma as the decimal sign the cells "
        "are parted by semicolons or tabs";
    c_.work.out.problems.push_back(std::move(problem));
    wide_ = true;
  }

  // ---- readings ----

  void take_asked(const ColumnAsked& asked) {
    const auto index = static_cast<std::size_t>(asked.channel);
    c_.declined[index] = asked.header.empty();
    if (asked.header.empty()) return;
    const auto column = column_of(asked);
    c_.told[index] = !column;
    if (!column) return;
    Chosen chosen{*column, {}};
    chosen.meaning.channel = asked.channel;
    if (const auto& meaning = c_.meanings[*column]; meaning && meaning->channel == asked.channel)
      chosen.meaning = *meaning;
    if (!asked.unit.empty()) {
      chosen.meaning.per_width = false;
      const auto unit = unit_for(asked.channel, asked.unit, chosen.meaning.per_width);
      chosen.meaning.unit_fits = unit.has_value();
      chosen.meaning.unit = unit.value_or(asked.unit);
    } else if (!c_.meanings[*column] || c_.meanings[*column]->channel != asked.channel) {
      take_unit_of_cell(*column, chosen.meaning);
    }
    if (asked.channel == LogChannel::time) {
      c_.time = chosen;
      c_.taken[*column] = true;
    } else {
      take(chosen);
    }
  }

  /// The unit that stands in the head, or below it, of a column whose name says
  /// nothing.
  void take_unit_of_cell(std::size_t column, LogMeaning& meaning) const {
    std::string written = in_brackets(looked_at(c_.work.head[column].text)).unit;
    if (written.empty() && column < c_.work.units.size()) written = c_.work.units[column];
    if (written.empty()) {
      for (const NamedUnit& part : with_loose_unit(c_.work.head[column].text)) written = part.unit;
      const std::string& text = c_.work.head[column].text;
      if (const std::size_t bar = text.rfind('_'); written.empty() && bar != std::string::npos) {
        bool per_width = false;
        if (unit_for(meaning.channel, text.substr(bar + 1), per_width)) written = text.substr(bar + 1);
      }
    }
    if (written.empty()) return;
    const auto unit = unit_for(meaning.channel, written, meaning.per_width);
    meaning.unit_fits = unit.has_value();
    meaning.unit = unit.value_or(written);
  }

  std::optional<std::size_t> column_of(const ColumnAsked& asked) {
    const auto names = [&](const Cell& cell) { return names_cell(asked, cell.text); };
    const auto found = std::find_if(c_.work.head.begin(), c_.work.head.end(), names);
    if (found != c_.work.head.end()) return static_cast<std::size_t>(found - c_.work.head.begin());
    const auto count = c_.work.head.size();
    if (asked.number > 0 && static_cast<std::size_t>(asked.number) <= count)
      return static_cast<std::size_t>(asked.number) - 1;
    const std::string near = nearest(asked.name, c_.head_texts());
    c_.work.out.problems.push_back(
        option_problem("--columns", word_of(asked.channel) + "=" + asked.header,
                       fmt::format("the log has no column \"{}\"{}", clipped(asked.name),
                                   near.empty() ? "" : "; did you mean \"" + clipped(near) + "\"?"),
                       fmt::format("a number from 1 to {}, or one of {}", count, listed(c_.head_texts()))));
    return std::nullopt;
  }

  /// The column that the head gives a channel: the one of the best name whose
  /// unit fits.
  void take_named(LogChannel channel) {
    const auto index = static_cast<std::size_t>(channel);
    if (c_.plan.has[index] || c_.declined[index] || c_.told[index]) return;
    std::vector<Chosen> fits;
    std::vector<Chosen> others;
    for (std::size_t i = 0; i < c_.meanings.size(); ++i) {
      if (c_.taken[i] || !c_.meanings[i] || c_.meanings[i]->channel != channel || c_.meanings[i]->what != What::channel)
        continue;
      (c_.meanings[i]->unit_fits ? fits : others).push_back({i, *c_.meanings[i]});
    }
    if (fits.empty()) {
      if (!others.empty()) take(others.front());  // tells what is wrong with its unit
      return;
    }
    const auto best = std::min_element(
        fits.begin(), fits.end(), [](const Chosen& a, const Chosen& b) { return a.meaning.rank < b.meaning.rank; });
    const auto as_good = std::count_if(fits.begin(), fits.end(),
                                       [&](const Chosen& each) { return each.meaning.rank == best->meaning.rank; });
    if (as_good > 1) return tell_ambiguous(channel, fits);
    take(*best);
  }

  void tell_ambiguous(LogChannel channel, const std::vector<Chosen>& all) {
    c_.told[static_cast<std::size_t>(channel)] = true;
    std::vector<std::string> names;
    for (const Chosen& each : all) names.push_back(one_line(c_.work.head[each.column].text));
    const std::string word = word_of(channel);
    c_.tell(all[1].column, fmt::format("several columns could be the {}: {}", word, listed(names)),
            fmt::format("--columns \"{}={}\", or \"{}=\" to read none of them", word,
                        c_.work.head[all.front().column].text, word));
  }

  void take(const Chosen& chosen) {
    const LogMeaning& meaning = chosen.meaning;
    const auto index = static_cast<std::size_t>(meaning.channel);
    c_.taken[chosen.column] = true;
    CellPlan cell;
    cell.role = CellRole::reading;
    cell.channel = meaning.channel;
    cell.kind = kind_of_cells(meaning.channel, meaning.per_width);
    cell.name = word_of(meaning.channel);
    cell.more = meaning.more;
    c_.told[index] = !(set_unit(chosen, cell) && set_width(chosen, cell));
    if (c_.told[index]) return;
    cell.factor *= cell.more;
    cell.offset *= cell.more;
    c_.plan.cells[chosen.column] = cell;
    c_.plan.has[index] = true;
    c_.read_as[chosen.column] = meaning;
  }

  bool set_unit(const Chosen& chosen, CellPlan& cell) {
    const LogMeaning& meaning = chosen.meaning;
    const auto read = units::parse_unit(meaning.unit, cell.kind);
    if (const auto* unit = std::get_if<units::UnitValue>(&read)) {
      cell.factor = unit->factor;
      cell.offset = unit->offset;
      return true;
    }
    if (meaning.unit.empty() &&
        std::holds_alternative<double>(units::parse(c_.first_value(chosen.column), cell.kind))) {
      cell.own_unit = true;
      return true;
    }
    if (meaning.unit.empty())
      return c_.tell(chosen.column, fmt::format("the {} has no unit", cell.name), ways_of(meaning.channel)), false;
    return c_.tell(chosen.column, std::get<units::Fault>(read).what, ways_of(meaning.channel)), false;
  }

  /// A tension per width needs the width of the web.
  bool set_width(const Chosen& chosen, CellPlan& cell) {
    if (!chosen.meaning.per_width) return true;
    if (!c_.work.options.width) {
      c_.tell(chosen.column, "the tension is given per width, and no job says how wide the web is",
              "--job with the job that ran, or a tension over the whole width, "
              "such as tension [N]");
      return false;
    }
    cell.more *= *c_.work.options.width;
    c_.work.out.assumptions.push_back({"the tension is logged per width and stands for a web of {0}",
                                       {{*c_.work.options.width, Quantity::short_length}}});
    return true;
  }

  void tell_missing_tension() {
    const std::vector<std::string> texts = c_.head_texts();
    const bool named = std::any_of(texts.begin(), texts.end(), [](const std::string& text) { return !text.empty(); });
    c_.tell_missing("the log has no tension",
                    fmt::format("a column such as tension [N], or --columns \"tension=COLUMN [N]\"{}",
                                named ? " with one of " + listed(texts) : ""));
  }

  // ---- how the columns were understood ----

  void list_columns() {
    for (std::size_t i = 0; i < c_.work.head.size(); ++i) {
      const auto read = c_.read_as.find(i);
      const std::string header = clipped(one_line(c_.work.head[i].text));
      if (header.empty() && read == c_.read_as.end()) continue;
      ColumnRead column{c_.work.file, std::to_string(i + 1), header, "", "", false};
      if (read != c_.read_as.end()) {
        column.field = word_of(read->second.channel);
        column.unit = shown_unit(c_.plan.cells[i], read->second);
        column.key = read->second.key;
      }
      c_.work.out.columns.push_back(std::move(column));
    }
  }

  static std::string shown_unit(const CellPlan& cell, const LogMeaning& meaning) {
    switch (cell.role) {
      case CellRole::date:
        return "date";
      case CellRole::clock:
        return "time of day";
      case CellRole::date_and_clock:
        return "date and time";
      case CellRole::number_of_time:
        return cell.name == "time" ? (meaning.unit.empty() ? "s" : meaning.unit) : "rows";
      case CellRole::reading:
      case CellRole::skipped:
        break;
    }
    return meaning.unit;
  }

  AssignedColumns c_;
  bool wide_{};
};

}  // namespace

bool names_cell(const ColumnAsked& asked, const std::string& cell) {
  if (cell.empty() || asked.header.empty()) return false;
  const std::string text = one_line(cell);
  if (text == asked.header || text == asked.name) return true;
  const std::string words = header_words(asked.name);
  return !words.empty() && asked.number == 0 && header_words(in_brackets(looked_at(text)).name) == words;
}

void assign_columns(LogAssignment& work) { Assigner(work).run(); }

}  // namespace holdback::files
