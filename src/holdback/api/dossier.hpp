// What the papers of a stand are made from: the core asked about the mix, and about a few of its jobs in depth.
#pragma once

#include "holdback/api/papers.hpp"
#include "holdback/papers/dossier.hpp"

namespace holdback::api {

/// How much of the dossier a paper needs: the choice alone, or jobs in depth, in motion and worked through as well.
enum class Depth { choice, whole };

/// Asks the core. The stand must be free of errors, and have a candidate.
papers::Dossier make_dossier(const PapersRequest& request, const Stand& stand, const Answer& read, Depth depth);

}  // namespace holdback::api
