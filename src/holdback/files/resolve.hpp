// Drafts → model values: names become values, missing numbers are derived from their neighbours. Faults that only show
// here are told to the Reading that read the draft.
#pragma once

#include <string>

#include "holdback/files/drafts.hpp"
#include "holdback/files/node.hpp"
#include "holdback/files/reading.hpp"

namespace holdback::files {

/// basis weight = density × caliper when only the density is given; one of the two is needed.
Web resolved(const WebDraft& draft, const Node& node, const Owner& owner, Reading& reading);

/// A named web with the fields of a row put over it. Whichever of density and basis weight the row gives replaces both;
/// a new caliper keeps the density where that is known.
Web overridden(const Web& base, const WebDraft& draft, const Node& row);

/// Web and roll by name from `stand`, the job's own width, tension = tension per width × width.
Job resolved(const JobDraft& draft, const Stand& stand, const Node& node, const Owner& owner, Reading& reading);

/// The same with web and roll already known.
Job resolved(const JobDraft& draft, const Web& web, const Roll& roll, const Node& node, const Owner& owner,
             Reading& reading);

/// The web or roll of this name; one of NaN, and a problem at `key`, when there is none.
Web web_called(const std::string& name, const Stand& stand, const Node& node, const Owner& owner, Reading& reading);
Roll roll_called(const std::string& name, const Stand& stand, const Node& node, const Owner& owner, Reading& reading);

/// Pad by its form; the pad's face from its geometry when it is not given.
Brake resolved(const BrakeDraft& draft);

/// Model values → drafts, as a file would say them. A number that may have been derived from its neighbours (basis
/// weight, face of the pads) is there all the same.
WebDraft draft_of(const Web& web);
BrakeDraft draft_of(const Brake& brake);

/// Whether such a number is what its neighbours make it.
bool basis_weight_derived(const Web& web);
bool pad_area_derived(const Brake& brake);

}  // namespace holdback::files
