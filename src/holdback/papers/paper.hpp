// A paper before it is set: what stands on it, block by block, in the reader's words and units. The writers (PDF in
// apps/papers, HTML on the page) give it fonts, lines and page breaks; they neither compute nor word anything.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "holdback/draw/scene.hpp"
#include "holdback/results/limit.hpp"

namespace holdback::papers {

enum class Kind { selection_report, setup_card, maintenance_card, commissioning_sheet, comparison, change_list };
inline constexpr Kind last_kind = Kind::change_list;

/// "selection_report"; and as a person reads it: "Selection report".
std::string_view key_of(Kind kind);
std::string_view name_of(Kind kind);

/// How a text is meant.
enum class Tone { normal, strong, muted };

/// A heading of its section; levels 1 to 3. Levels 1 and 2 are in the outline. It never stands last on a page.
struct Heading {
  std::string text{};
  int level{1};
};

/// Lines of text, broken where the page ends.
struct Paragraph {
  std::string text{};
  Tone tone{Tone::normal};
};

/// Items with a dash, or with their number when their order matters.
struct Items {
  std::vector<std::string> items{};
  bool numbered{};
};

/// A label with its value: "web tension", "120 N".
struct Fact {
  std::string label{};
  std::string value{};
};

/// Facts in columns beside each other. `large` ones are read from an arm's length.
struct Facts {
  std::vector<Fact> facts{};
  int columns{2};
  bool large{};
};

/// A column of a table. Numbers stand right-aligned with as many decimals as their neighbours, so that points align.
struct Column {
  std::string head{};
  std::string unit{};  // "bar", under the head; empty: none
  bool number{};
};

/// A cell. A state adds its sign (ring, triangle, cross) before the word.
struct Cell {
  std::string text{};
  Tone tone{Tone::normal};
  bool has_state{};
  State state{State::holds};
};

/// A table; its head is repeated on every page that it runs over, and no row is split.
struct Table {
  std::string caption{};  // above it; empty: none
  std::vector<Column> columns{};
  std::vector<std::vector<Cell>> rows{};  // missing cells at the end of a row are empty
  double row_height{};                    // [mm] at least; for rows that are filled by hand
  bool large{};                           // read from an arm's length
};

/// A drawing, in the scene that every writer of pictures draws. Never wider than the text, never split.
struct Figure {
  draw::Scene scene{};
  double share{1};  // of the text's width, 0.2 … 1
};

/// An equation as a checker follows it: the bare formula, the same with numbers put in, what comes out.
struct Equation {
  std::string name{};     // "Brake torque in steady run"
  std::string id{};       // of the function and of its heading in the method's page: "brake_torque"
  std::string formula{};  // "M = F · d / 2 − M_drag"
  std::string put_in{};   // "M = 120 N · 1.000 m / 2 − 1.5 N·m"
  std::string result{};   // "M = 58.5 N·m"
  std::string source{};   // where it comes from, in words
};

/// The words of ISO 3864-2 and ANSI Z535 for how bad it may get; notice: no harm to people.
enum class Signal { danger, warning, caution, notice };
std::string_view word_of(Signal signal);  // "WARNING"

/// What may hurt, in a frame with its signal word.
struct Warning {
  Signal signal{Signal::warning};
  std::string text{};
};

/// How it ended, in a line that cannot be missed: "holds: every job is covered".
struct Verdict {
  State state{State::holds};
  std::string text{};
};

/// What follows begins on a new page.
struct PageBreak {};

using Block = std::variant<Heading, Paragraph, Items, Facts, Table, Figure, Equation, Warning, Verdict, PageBreak>;

/// A paper. `cover`: the title takes a page of its own with the first Facts; else it stands above the first block.
struct Paper {
  Kind kind{};
  std::string file{};     // of its name, without ending: "selection-report", "card-01-paper-labels"
  std::string title{};    // "Selection report"
  std::string subject{};  // "Label slitter, unwind 1"
  std::string date{};     // as the user gave it: "2026-11-28"; empty: none
  bool cover{};
  bool one_page{};   // set smaller, within reason, until it fits on one page; the writer says when it does not
  double size{9.5};  // [pt] of the text
  std::vector<Block> blocks{};
};

}  // namespace holdback::papers
