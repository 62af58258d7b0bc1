// What the chapters of the selection report share: a chapter that is filled from the top, tables filled column by
// column, and values in the digits that are meant. What the other papers share with the report is here too.
#pragma once

#include <cmath>
#include <functional>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "holdback/papers/dossier.hpp"
#include "holdback/papers/paper.hpp"

namespace holdback::papers::selection {

/// One chapter of the report, filled from the top. Text may come from a file: what a terminal or a viewer would act on
/// is taken out. Empty facts, items and tables are not added.
class Chapter {
 public:
  /// An empty chapter.
  explicit Chapter(units::System system) : system_(system) {}

  /// The units of the reader.
  units::System system() const { return system_; }

  /// A heading inside of the chapter, of level 2 or 3; left out at the end when nothing follows it.
  void heading(std::string_view text, int level = 2);
  /// A paragraph.
  void say(std::string_view text, Tone tone = Tone::normal);
  /// A line that cannot be missed.
  void verdict(State state, std::string_view text);
  /// Items with dashes or numbers.
  void items(std::vector<std::string> items, bool numbered = false);
  /// Labels with values; those without a value are left out.
  void facts(std::vector<Fact> facts, int columns = 2);
  /// A table.
  void table(Table table);
  /// A drawing.
  void figure(draw::Scene scene, double share = 1);
  /// Something that may hurt.
  void warning(Signal signal, std::string_view text);
  /// An equation with numbers put in.
  void equation(Equation equation);

  /// What was filled in, without headings that nothing follows.
  std::vector<Block> take();

 private:
  units::System system_;
  std::vector<Block> blocks_{};
};

/// A result in the digits that are meant, with its unit, on one line: "58.5 N·m", "12 000 h". Rounded to `digits`
/// digits also before the point.
std::string meant(double si, Quantity kind, units::System system, int digits = 3);

/// An input with its unit: as many digits as it was given, five at most; three where it was given in other units.
std::string given(double si, Quantity kind, units::System system);

/// "about 2600 h": life, of which two digits are meant.
std::string life(double seconds, units::System system);

/// A time as a person would say it: "40 s", "25 min", "3.2 h".
std::string spell(double seconds, units::System system);

/// A share of the samples: "93 %", ">99.9 %", "100 %" only when it is whole.
std::string chance(double share);

/// The word by which a bound is known: "formula", "maker's rating", "setting", "common practice".
std::string_view known_by(Known known);

/// Where a limit binds: "emergency stop at Ø 600 mm".
std::string where(const Limit& limit, units::System system);

/// "at least"/"at most" as it stands before a bound: "≥ ", "≤ ".
std::string_view sign_of(Sense sense);

/// A cell with a state: its word, strong when it fails.
Cell state_cell(State state);

/// A cell with a text that has that state: "−10 %".
Cell judged(std::string text, State state);

/// What is in hand of a limit, with its state; "–" when it was not checked.
Cell in_hand_of(const std::vector<Limit>& limits, LimitId id);

/// A note as a sentence: filled in, first letter large, a full stop at its end.
std::string sentence(const Note& note, units::System system);

/// "2 × D300, 3 pairs each, grade M; 2 of 3 engaged": what stands under a figure.
std::string under(const Fit& fit, int pairs);

/// The recommended fit; null: none.
const FitResult* recommended(const Dossier& dossier);

/// Every job on the recommended fit; empty without one.
const std::vector<JobFit>& jobs_on_fit(const Dossier& dossier);

/// The plan of that job; null: none.
const JobPlan* plan_of(const Dossier& dossier, const std::string& job);

/// The jobs in depth that have an answer.
std::vector<const Choice*> in_depth(const Dossier& dossier);

/// The jobs of the mix as words: "6 jobs".
std::string mix_in_words(std::size_t jobs);

/// Numbers of one column with the same count of decimals. `digits` above zero: results, rounded to so many digits; 0:
/// inputs, with the fewest decimals that show them all, four digits at least. What is not a number is "–".
std::vector<std::string> column_text(const std::vector<double>& si, Quantity kind, units::System system, int digits);

/// A number of a member that may be absent.
inline double number_of(double value) { return value; }
inline double number_of(int value) { return value; }
inline double number_of(const std::optional<double>& value) {
  return value.value_or(std::numeric_limits<double>::quiet_NaN());
}

/// A table with one row an entry, filled column by column. `get` is a member or a function of the entry. A column of
/// numbers that no entry has is left out.
template <typename Entry>
class Rows {
 public:
  /// A table of these entries, which must outlive it.
  Rows(const std::vector<Entry>& entries, units::System system) : entries_(entries), system_(system) {
    table_.rows.resize(entries.size());
  }

  /// Names and words.
  template <typename Get>
  Rows& text(std::string head, Get get) {
    return cells({std::move(head), "", false}, [&](const Entry& entry) {
      return Cell{std::string(std::invoke(get, entry)), Tone::normal, false, State::holds};
    });
  }

  /// Numbers that were put in.
  template <typename Get>
  Rows& input(std::string head, Quantity kind, Get get) {
    return numbers(std::move(head), kind, get, 0);
  }

  /// Numbers that come out, rounded to the digits that are meant.
  template <typename Get>
  Rows& result(std::string head, Quantity kind, Get get, int digits = 3) {
    return numbers(std::move(head), kind, get, digits);
  }

  /// States.
  template <typename Get>
  Rows& state(std::string head, Get get) {
    return cells({std::move(head), "", false}, [&](const Entry& entry) { return state_cell(std::invoke(get, entry)); });
  }

  /// Cells of any kind.
  template <typename Get>
  Rows& cells(Column column, Get get) {
    table_.columns.push_back(std::move(column));
    for (std::size_t i = 0; i < entries_.size(); ++i) table_.rows[i].push_back(std::invoke(get, entries_[i]));
    return *this;
  }

  /// The table, under its caption.
  Table under(std::string caption) {
    table_.caption = std::move(caption);
    return std::move(table_);
  }

 private:
  template <typename Get>
  Rows& numbers(std::string head, Quantity kind, Get get, int digits) {
    std::vector<double> values;
    bool any = false;
    for (const Entry& entry : entries_) {
      values.push_back(number_of(std::invoke(get, entry)));
      any = any || !std::isnan(values.back());
    }
    if (!any) return *this;
    table_.columns.push_back({std::move(head), units::unit_of(kind, system_), true});
    const auto texts = column_text(values, kind, system_, digits);
    for (std::size_t i = 0; i < texts.size(); ++i)
      table_.rows[i].push_back({texts[i], Tone::normal, false, State::holds});
    return *this;
  }

  const std::vector<Entry>& entries_;
  units::System system_;
  Table table_{};
};

/// The chapters, in the order of the report. One that adds nothing does not appear.
void result(Chapter& chapter, const Dossier& dossier);
void stand(Chapter& chapter, const Dossier& dossier);
void mix(Chapter& chapter, const Dossier& dossier);
void fit(Chapter& chapter, const Dossier& dossier);
void falls_out(Chapter& chapter, const Dossier& dossier);
void depth(Chapter& chapter, const Dossier& dossier);
void heat(Chapter& chapter, const Dossier& dossier);
void stops(Chapter& chapter, const Dossier& dossier);
void pressure(Chapter& chapter, const Dossier& dossier);
void control(Chapter& chapter, const Dossier& dossier);
void pads(Chapter& chapter, const Dossier& dossier);
void shaft(Chapter& chapter, const Dossier& dossier);
void uncertainty(Chapter& chapter, const Dossier& dossier);
void worked(Chapter& chapter, const Dossier& dossier);
void given_and_taken(Chapter& chapter, const Dossier& dossier);
void cautions(Chapter& chapter, const Dossier& dossier);

/// Parts of two chapters each: what is said of a run, wherever one is shown, and of a tuning.
void run_shown(Chapter& chapter, const MotionRun& run);
void tuning_shown(Chapter& chapter, const Tuning& tuning, bool run_is_shown);

}  // namespace holdback::papers::selection
