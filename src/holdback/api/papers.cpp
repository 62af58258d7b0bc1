#include "holdback/api/papers.hpp"

#include <algorithm>
#include <array>

#include "holdback/api/dossier.hpp"
#include "holdback/api/request_problem.hpp"
#include "holdback/files/compare_stands.hpp"
#include "holdback/model/date.hpp"
#include "holdback/papers/papers.hpp"

namespace holdback::api {

namespace {

using papers::Dossier;
using papers::Kind;

struct KindWord {
  const char* word;
  Kind kind;
};
constexpr std::array<KindWord, 6> kind_words{{{"report", Kind::selection_report},
                                              {"cards", Kind::setup_card},
                                              {"maintenance", Kind::maintenance_card},
                                              {"commissioning", Kind::commissioning_sheet},
                                              {"comparison", Kind::comparison},
                                              {"changes", Kind::change_list}}};

bool other_fit(const PapersRequest& request) {
  return request.other_brake || request.other_grade || request.other_brakes;
}

/// The kinds that are made: those asked for, else all that the request has something for.
std::vector<Kind> kinds_of(const PapersRequest& request) {
  if (!request.kinds.empty()) return request.kinds;
  std::vector<Kind> kinds{Kind::selection_report, Kind::setup_card, Kind::maintenance_card, Kind::commissioning_sheet};
  if (request.beside || other_fit(request)) kinds.push_back(Kind::comparison);
  if (request.before) kinds.push_back(Kind::change_list);
  return kinds;
}

bool has(const std::vector<Kind>& kinds, Kind kind) {
  return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

/// What the papers alone ask for, beside what size asks for.
Problems problems_of(const PapersRequest& request) {
  Problems problems;
  if (!request.date.empty() && !day_of(request.date))
    problems.push_back(
        request_problem("this is no date", "--date", request.date, "year-month-day, such as 2026-05-03"));
  if (has(request.kinds, Kind::comparison) && !request.beside && !other_fit(request))
    problems.push_back(
        request_problem("a comparison needs something to compare with", "--only", "comparison",
                        "--beside FILE, or another fit by --other-brake, --other-grade, --other-brakes"));
  if (has(request.kinds, Kind::change_list) && !request.before)
    problems.push_back(
        request_problem("a list of changes needs the earlier revision", "--only", "changes", "--before FILE"));
  return problems;
}

/// A stand of the request, read as size reads it.
StandRead read(Request request, const Source& source) {
  request.command = "size";
  request.stand = source;
  return read_stand_for(request);
}

void refuse(PaperSet& set, Problems problems) {
  set.answer.outcome = Outcome::bad_input;
  set.answer.problems = std::move(problems);
  set.papers.clear();
  set.attachments.clear();
}

/// The other side of a comparison or a list of changes: its dossier, or none when its file or its fit is bad.
std::optional<Dossier> other_dossier(PapersRequest other, const Source& source, PaperSet& set) {
  other.base.stand = source;
  other.base.job.clear();
  const StandRead reading = read(other.base, source);
  if (!reading.stand) {
    refuse(set, reading.answer.problems);
    return std::nullopt;
  }
  return make_dossier(other, *reading.stand, reading.answer, Depth::choice);
}

PapersRequest with_other_fit(const PapersRequest& request) {
  PapersRequest other = request;
  other.base.brake = request.other_brake ? request.other_brake : request.base.brake;
  other.base.grade = request.other_grade ? request.other_grade : request.base.grade;
  other.base.brakes = request.other_brakes ? request.other_brakes : request.base.brakes;
  return other;
}

/// What a comparison holds against the stand: another file, or another fit of the same.
std::optional<Dossier> compared(const PapersRequest& request, PaperSet& set) {
  if (request.beside) return other_dossier(request, *request.beside, set);
  return other_dossier(with_other_fit(request), request.base.stand, set);
}

void add_cards(const Dossier& dossier, const std::string& job, PaperSet& set) {
  for (const Job& one : dossier.stand.jobs)
    if (job.empty() || one.name == job) set.papers.push_back(papers::setup_card(dossier, one.name));
}

void add(Kind kind, const PapersRequest& request, const Dossier& dossier, PaperSet& set) {
  switch (kind) {
    case Kind::selection_report:
      set.papers.push_back(papers::selection_report(dossier));
      break;
    case Kind::setup_card:
      add_cards(dossier, request.base.job, set);
      break;
    case Kind::maintenance_card:
      set.papers.push_back(papers::maintenance_card(dossier));
      break;
    case Kind::commissioning_sheet:
      set.papers.push_back(papers::commissioning_sheet(dossier));
      set.attachments.push_back({"commissioning-sheet.csv", papers::commissioning_csv(dossier)});
      break;
    case Kind::comparison:
      if (const auto other = compared(request, set)) set.papers.push_back(papers::comparison(dossier, *other));
      break;
    case Kind::change_list:
      if (const auto before = other_dossier(request, *request.before, set)) {
        const Changes changes = files::changes_between(before->stand, dossier.stand, request.system);
        set.papers.push_back(papers::change_list(*before, dossier, changes));
      }
      break;
  }
}

bool needs_depth(const std::vector<Kind>& kinds) {
  return std::any_of(kinds.begin(), kinds.end(),
                     [](Kind kind) { return kind != Kind::comparison && kind != Kind::change_list; });
}

}  // namespace

std::optional<papers::Kind> paper_called(const std::string& name) {
  for (const auto& [word, kind] : kind_words)
    if (name == word) return kind;
  return std::nullopt;
}

PaperSet make_papers(const PapersRequest& request) {
  PaperSet set;
  set.answer.command = "papers";
  if (Problems problems = problems_of(request); !problems.empty()) {
    refuse(set, std::move(problems));
    return set;
  }
  const StandRead reading = read(request.base, request.base.stand);
  set.answer.problems = reading.answer.problems;
  if (!reading.stand) {
    refuse(set, reading.answer.problems);
    return set;
  }
  const auto kinds = kinds_of(request);
  const Dossier dossier =
      make_dossier(request, *reading.stand, reading.answer, needs_depth(kinds) ? Depth::whole : Depth::choice);
  set.answer = dossier.size;
  set.answer.command = "papers";
  for (const Kind kind : kinds) {
    add(kind, request, dossier, set);
    if (set.answer.outcome == Outcome::bad_input) break;
  }
  return set;
}

}  // namespace holdback::api
