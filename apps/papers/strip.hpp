// A paper as strips: what is never split, from top to bottom, before it is known on which page each one stands.
#pragma once

#include <cairo.h>

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "holdback/papers/paper.hpp"
#include "text.hpp"

namespace holdback::pdf {

/// Draws something with its top left corner there.
using Drawing = std::function<void(cairo_t* cr, double x, double y)>;

/// What is set again at the top of a page that begins with such a strip: the head of a table.
struct Repeat {
  double height{};
  Drawing draw{};
};

/// An entry of the outline: 1 for the outermost level.
struct Entry {
  std::string text{};
  int level{1};
};

struct Strip {
  double before{};  // room above it; none at the top of a page
  double height{};
  bool keeps{};     // on the page of the strip after it
  bool new_page{};  // begins one
  Drawing draw{};
  std::shared_ptr<const Repeat> repeat{};
  std::optional<Entry> entry{};
};
using Strips = std::vector<Strip>;

/// What a block is set for.
struct Setting {
  Typesetter* type{};
  double width{};   // of the text
  double height{};  // of a page's body
  double size{};    // of the text
  double scale{1};  // that the whole will be drawn at; a height to write in is not made smaller
  std::vector<std::string>* warnings{};
};

/// The strips of each block.
void set_heading(Strips& out, const Setting& setting, const papers::Heading& heading);
void set_paragraph(Strips& out, const Setting& setting, const papers::Paragraph& paragraph);
void set_items(Strips& out, const Setting& setting, const papers::Items& items);
void set_facts(Strips& out, const Setting& setting, const papers::Facts& facts);
void set_table(Strips& out, const Setting& setting, const papers::Table& table);
/// Figures that follow each other stand side by side.
void set_figures(Strips& out, const Setting& setting, const std::vector<const papers::Figure*>& figures);
void set_equation(Strips& out, const Setting& setting, const papers::Equation& equation);
void set_warning(Strips& out, const Setting& setting, const papers::Warning& warning);
void set_verdict(Strips& out, const Setting& setting, const papers::Verdict& verdict);

/// All blocks from `first` on; `skipped`, when it is not null, is left out.
void set_blocks(Strips& out, const Setting& setting, const std::vector<papers::Block>& blocks,
                const papers::Block* skipped);

/// Lines of a text as one strip each, so that a page may end between them, but not after the first or before the last.
void add_lines(Strips& out, const TextPtr& text, double indent, double before, Ink ink, const Drawing& beside = {});

}  // namespace holdback::pdf
