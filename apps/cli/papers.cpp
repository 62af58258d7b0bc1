// papers: the core makes them, apps/papers sets them, here they become files.
#include <algorithm>
#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include "actions.hpp"
#include "holdback/api/papers.hpp"
#include "holdback/draw/cells.hpp"
#include "holdback/report/report.hpp"
#include "host.hpp"
#include "pdf.hpp"

namespace holdback::cli {

namespace {

/// A file to write, with what the list on the terminal says of it.
struct Made {
  std::string name{};
  std::string bytes{};
  std::string what{};
};

std::vector<papers::Kind> kinds_of(const std::string& list) {
  std::vector<papers::Kind> kinds;
  for (std::size_t from = 0; from < list.size();) {
    const std::size_t comma = std::min(list.find(',', from), list.size());
    const std::string name = list.substr(from, comma - from);
    const auto kind = api::paper_called(name);
    if (!kind) throw Refusal("--only: no paper is called \"" + name + "\"; there are " + api::paper_words);
    if (std::find(kinds.begin(), kinds.end(), *kind) == kinds.end()) kinds.push_back(*kind);
    from = comma + 1;
  }
  return kinds;
}

api::PapersRequest papers_request(const Settings& settings, units::System system, Problems& problems) {
  api::PapersRequest request;
  request.base = request_of(settings, problems);
  request.date = settings.date;
  request.system = system;
  request.kinds = kinds_of(settings.only);
  if (!settings.beside.empty()) request.beside = read_or_note(settings.beside, problems);
  if (!settings.before.empty()) request.before = read_or_note(settings.before, problems);
  if (!settings.other_brake.empty()) request.other_brake = settings.other_brake;
  if (!settings.other_grade.empty()) request.other_grade = settings.other_grade;
  request.other_brakes = settings.other_brakes;
  return request;
}

pdf::Options options_of(const Settings& settings, units::System system) {
  const bool letter = settings.sheet_size.empty() ? system == units::System::us : settings.sheet_size == "letter";
  return {letter ? pdf::Sheet::letter : pdf::Sheet::a4, settings.date};
}

std::string counted(int pages) { return std::to_string(pages) + (pages == 1 ? " page" : " pages"); }

/// The papers as PDFs: each a file of its own, but the cards of a mix together in one.
std::vector<Made> set_all(const api::PaperSet& set, const pdf::Options& options) {
  std::vector<Made> made;
  std::vector<papers::Paper> cards;
  const auto take = [&](const std::string& name, const pdf::Written& written) {
    for (const auto& warning : written.warnings)
      std::fprintf(stderr, "holdback: %s: %s\n", name.c_str(), draw::plain(warning).c_str());
    made.push_back({name, written.bytes, counted(written.pages)});
  };
  for (const auto& paper : set.papers) {
    if (paper.kind == papers::Kind::setup_card)
      cards.push_back(paper);
    else
      take(paper.file + ".pdf", pdf::pdf(paper, options));
  }
  if (cards.size() == 1) take(cards.front().file + ".pdf", pdf::pdf(cards.front(), options));
  if (cards.size() > 1) take("set-up-cards.pdf", pdf::pdf(cards, options));
  for (const auto& one : set.attachments) made.push_back({one.file, one.text, "to fill in and give to fit"});
  return made;
}

std::string list_of(const std::vector<Made>& made) {
  std::string list;
  for (const auto& one : made) list += draw::pad_right(one.name, 30) + "  " + one.what + "\n";
  return list;
}

}  // namespace

int write_papers(const Settings& settings) {
  if (settings.out.empty()) throw Refusal("papers needs --out DIR, the folder to write into");
  const auto styles = styles_of(settings);
  Problems problems;
  const auto request = papers_request(settings, styles.out.system, problems);
  api::PaperSet set;
  if (problems.empty()) {
    set = api::make_papers(request);
  } else {
    set.answer.command = settings.command;
    set.answer.outcome = Outcome::bad_input;
    set.answer.problems = std::move(problems);
  }
  Settings on_terminal = settings;
  on_terminal.out.clear();
  if (settings.json)
    write(api::json(set), on_terminal);
  else
    std::fputs(report::problems_text(set.answer.problems, styles.err).c_str(), stderr);
  if (set.answer.outcome == Outcome::bad_input) return static_cast<int>(set.answer.outcome);
  if (request.base.progress) request.base.progress("setting the pages", 1);
  const auto made = set_all(set, options_of(settings, styles.out.system));
  make_folder(settings.out);
  for (const auto& one : made) write_in(settings.out, one.name, one.bytes);
  if (!settings.json) write(list_of(made), on_terminal);
  return static_cast<int>(set.answer.outcome);
}

}  // namespace holdback::cli
