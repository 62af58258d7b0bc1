// What the papers that set two dossiers against each other share: the jobs of both, and their values in columns whose
// digits agree. Only comparison.cpp and change_list.cpp include this.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "holdback/papers/dossier.hpp"
#include "holdback/papers/paper.hpp"
#include "holdback/papers/report_parts.hpp"

namespace holdback::papers::sides {

/// A job of either mix with what the recommended fit of each does for it; null where the mix has no such job, or no fit
/// was recommended.
struct Both {
  std::string job{};
  const JobFit* first{};
  const JobFit* second{};
};

/// The jobs of the first mix in its order, then those that only the second one has.
std::vector<Both> jobs_of(const Dossier& first, const Dossier& second);

/// Names of the jobs that one mix has and the other one lacks.
std::vector<std::string> only_in(const Dossier& one, const Dossier& other);

/// The worst that can be said of a dossier's mix: fails when a job is not covered, or no fit was found.
State state_of(const Dossier& dossier);

/// How a side ends: "tight: A, 6 of 6 jobs covered, 1 of them tight, by 2 × D300, 3 pairs each, grade M".
void verdict(selection::Chapter& chapter, const Dossier& dossier, const std::string& side);

/// Facts of the choices as rows: what, of the first, of the second.
std::vector<std::vector<Cell>> choice_rows(const Dossier& first, const Dossier& second);

/// Which of two a value is of.
using Number = std::function<double(const Dossier&, const JobFit&)>;
/// A cell for the job's value on one side.
using Word = std::function<Cell(const JobFit&)>;

/// A table of the jobs whose columns come in pairs, one for each side.
class Jobs {
 public:
  /// Both dossiers and the jobs must outlive it. `heads` name the two sides.
  Jobs(const Dossier& first, const Dossier& second, const std::vector<Both>& jobs, std::vector<std::string> heads);

  /// Two columns of words.
  Jobs& words(const std::string& head, const Word& word);
  /// Two columns of results with the same count of decimals; not a number: "–".
  Jobs& results(const std::string& head, Quantity kind, const Number& number, int digits);
  /// The table, under its caption.
  Table under(std::string caption);

 private:
  const Dossier& first_;
  const Dossier& second_;
  const std::vector<Both>& jobs_;
  std::vector<std::string> heads_;
  Table table_{};
};

/// Values of the jobs.
double run_torque(const Dossier& dossier, const JobFit& job);  // [N·m] at the full roll, of the check, else of the plan
double hottest(const Dossier& dossier, const JobFit& job);     // [K] steady disc temperature
double pad_life(const Dossier& dossier, const JobFit& job);    // [s]
double slack_of(const StopFacts& stop);                        // [m] not a number when nothing stops the roll
Cell state_cell(const JobFit& job);
Cell in_hand(const JobFit& job);
Cell binding(const JobFit& job);

}  // namespace holdback::papers::sides
