// The selection report: its cover and its table of contents. Each chapter stands in a file of its own, report_*.cpp.
#include <fmt/format.h>

#include <array>

#include "holdback/papers/papers.hpp"
#include "holdback/papers/report_parts.hpp"
#include "holdback/report/phrase.hpp"

namespace holdback::papers {

namespace {

using selection::Chapter;

struct Part {
  std::string_view title;
  void (*fill)(Chapter& chapter, const Dossier& dossier);
};

constexpr std::array<Part, 16> contents{{
    {"The result in short", selection::result},
    {"The stand", selection::stand},
    {"The mix", selection::mix},
    {"The fit for each job", selection::fit},
    {"What falls out and what would bring it in", selection::falls_out},
    {"Jobs in depth: torque, limits, tension window", selection::depth},
    {"Heat", selection::heat},
    {"Stops and web break", selection::stops},
    {"Pressure over the roll", selection::pressure},
    {"Control", selection::control},
    {"Pads", selection::pads},
    {"Shaft and core", selection::shaft},
    {"Uncertainty", selection::uncertainty},
    {"One job by hand: every equation with its numbers", selection::worked},
    {"Assumptions, defaults, limits of the model", selection::given_and_taken},
    {"Cautions", selection::cautions},
}};

std::string units_in_words(units::System system) {
  return system == units::System::si ? "SI: mm, m/min, N, N·m, bar (gauge), °C"
                                     : "US: in, ft/min, lbf, in·lbf, psi (gauge), °F";
}

std::string fit_in_words(const Dossier& dossier) {
  const auto* best = selection::recommended(dossier);
  if (best == nullptr) return "none";
  return report::words_of(best->fit) + (best->covered == 0 ? ": covers no job, shown as the nearest" : "");
}

Facts cover(const Dossier& dossier) {
  return {{{"stand", dossier.stand.title},
           {"date", dossier.date.empty() ? "not given" : dossier.date},
           {"stand file", dossier.file.empty() ? "not named" : dossier.file},
           {"units", units_in_words(dossier.system)},
           {"mix", selection::mix_in_words(dossier.stand.jobs.size())},
           {"recommended fit", fit_in_words(dossier)},
           {"what it is",
            "the calculation by which an unwind brake was chosen for this mix, set out so that it can be checked line "
            "by line: inputs, limits, margins, and one job's equations with their numbers"},
           {"what it is not",
            "an approval, a maker's rating or a safety assessment; it stands on the values of the stand file, and is "
            "no better than they are"}},
          1,
          false};
}

/// Tables with a caption are numbered through the report, so that a line of it can be named.
void number_tables(std::vector<Block>& blocks) {
  int number = 0;
  for (auto& block : blocks) {
    auto* table = std::get_if<Table>(&block);
    if (table != nullptr && !table->caption.empty())
      table->caption = fmt::format("Table {}. {}", ++number, table->caption);
  }
}

}  // namespace

Paper selection_report(const Dossier& dossier) {
  Paper paper;
  paper.kind = Kind::selection_report;
  paper.file = "selection-report";
  paper.title = name_of(paper.kind);
  paper.subject = dossier.stand.title.empty() ? dossier.file : dossier.stand.title;
  paper.date = dossier.date;
  paper.cover = true;
  paper.blocks.emplace_back(cover(dossier));
  int number = 0;
  for (const auto& part : contents) {
    Chapter chapter(dossier.system);
    part.fill(chapter, dossier);
    auto blocks = chapter.take();
    if (blocks.empty()) continue;
    paper.blocks.emplace_back(Heading{fmt::format("{} {}", ++number, part.title), 1});
    for (auto& block : blocks) paper.blocks.push_back(std::move(block));
  }
  number_tables(paper.blocks);
  return paper;
}

}  // namespace holdback::papers
