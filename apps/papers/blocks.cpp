#include <type_traits>

#include "strip.hpp"

namespace holdback::pdf {

namespace {

struct Setter {
  Strips& out;
  const Setting& setting;

  void operator()(const papers::Heading& block) const { set_heading(out, setting, block); }
  void operator()(const papers::Paragraph& block) const { set_paragraph(out, setting, block); }
  void operator()(const papers::Items& block) const { set_items(out, setting, block); }
  void operator()(const papers::Facts& block) const { set_facts(out, setting, block); }
  void operator()(const papers::Table& block) const { set_table(out, setting, block); }
  void operator()(const papers::Equation& block) const { set_equation(out, setting, block); }
  void operator()(const papers::Warning& block) const { set_warning(out, setting, block); }
  void operator()(const papers::Verdict& block) const { set_verdict(out, setting, block); }
  void operator()(const papers::Figure& block) const { set_figures(out, setting, {&block}); }
  void operator()(const papers::PageBreak&) const {}
};

}  // namespace

void set_blocks(Strips& out, const Setting& setting, const std::vector<papers::Block>& blocks,
                const papers::Block* skipped) {
  bool new_page = false;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    const auto first = out.size();
    if (&blocks[i] == skipped) continue;
    if (std::holds_alternative<papers::PageBreak>(blocks[i])) {
      new_page = true;
    } else if (std::holds_alternative<papers::Figure>(blocks[i])) {
      std::vector<const papers::Figure*> figures;
      for (; i < blocks.size() && std::holds_alternative<papers::Figure>(blocks[i]); ++i) {
        figures.push_back(&std::get<papers::Figure>(blocks[i]));
      }
      --i;
      set_figures(out, setting, figures);
    } else {
      std::visit(Setter{out, setting}, blocks[i]);
    }
    if (new_page && out.size() > first) {
      out[first].new_page = true;
      new_page = false;
    }
  }
}

}  // namespace holdback::pdf
