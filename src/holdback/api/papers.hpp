// `papers`: everything that is left behind with the customer and on the machine, from one stand and its mix.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "holdback/api/answer.hpp"
#include "holdback/papers/paper.hpp"

namespace holdback::api {

/// What to make of a stand.
struct PapersRequest {
  Request base{};      // stand, jobs, fit, threads and progress as for size; `job`: the worked job, and the only card
  std::string date{};  // "2026-05-03"; empty: none on the papers
  units::System system{units::System::si};
  std::vector<papers::Kind> kinds{};         // empty: report, cards, maintenance card, commissioning sheet
  std::optional<Source> beside{};            // another stand: a comparison with it
  std::optional<Source> before{};            // an earlier revision of the stand: the list of changes since
  std::optional<std::string> other_brake{};  // comparison with another fit of the same stand: its brake …
  std::optional<std::string> other_grade{};  // … its grade …
  std::optional<int> other_brakes{};         // … so many on the shaft
};

/// A text that goes with the papers.
struct Attachment {
  std::string file{};  // with its ending: "commissioning-sheet.csv"
  std::string text{};
};

struct PaperSet {
  Answer answer{};  // problems, defaults and the choice; its outcome is that of the choice
  std::vector<papers::Paper> papers{};
  std::vector<Attachment> attachments{};
};

/// Makes the papers. Bad input becomes problems of the answer, and there are no papers then.
PaperSet make_papers(const PapersRequest& request);

/// The kind of paper of this name: "report", "cards", "maintenance", "commissioning", "comparison", "changes".
std::optional<papers::Kind> paper_called(const std::string& name);
inline constexpr const char* paper_words = "report, cards, maintenance, commissioning, comparison, changes";

/// The papers as JSON, figures as SVG: {"version":1,"command":"papers","outcome":…,"problems":[…],"papers":[…],
/// "attachments":[…]}. Problems and outcome are as in any other answer.
std::string json(const PaperSet& set);

}  // namespace holdback::api
