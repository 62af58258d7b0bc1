// The papers: each from the dossier of its stand and nothing else.
#pragma once

#include <string>
#include <vector>

#include "holdback/papers/dossier.hpp"
#include "holdback/papers/paper.hpp"
#include "holdback/results/changes.hpp"

namespace holdback::papers {

/// What a customer's engineer checks line by line: the mix, the fit and why, torque, heat, stops, control, wear, shaft,
/// uncertainty, assumptions, and one job's equations with numbers put in.
Paper selection_report(const Dossier& dossier);

/// The card at the machine for one job of the mix. A job that the fit does not cover gets a card that says not to run.
Paper setup_card(const Dossier& dossier, const std::string& job);

/// Pads, their limit and interval, changing them in order, run-in, guard and cooling.
Paper maintenance_card(const Dossier& dossier);

/// What to measure at the machine, with expected values, tolerances and room to write.
Paper commissioning_sheet(const Dossier& dossier);

/// The table of that sheet as CSV to be filled in: `fit` reads it back.
std::string commissioning_csv(const Dossier& dossier);

/// Two stands, or two fits of one, side by side.
Paper comparison(const Dossier& first, const Dossier& second);

/// What changed from one revision of a stand file to the next, and what that does to the choice and to each job.
Paper change_list(const Dossier& before, const Dossier& after, const Changes& changes);

}  // namespace holdback::papers
