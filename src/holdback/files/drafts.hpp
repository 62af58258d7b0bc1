// What one table of the file says, before names are resolved and missing values are derived: the model's value types
// with the few keys beside them that the model does not keep.
#pragma once

#include <optional>
#include <string>

#include "holdback/model/stand.hpp"

namespace holdback::files {

/// The keys that stand above all tables.
struct FileHead {
  int format{1};
};

struct WebDraft : Web {
  std::optional<double> given_basis_weight{};  // [kg/m²]
};

struct JobDraft : Job {
  std::string web_name{};
  std::string roll_name{};
  std::optional<double> tension_per_width{};  // [N/m]
  std::optional<double> width{};              // [m] of the web in this job
};

enum class PadForm { sector, round, data_sheet };

struct BrakeDraft : Brake {
  PadForm form{PadForm::sector};
  std::optional<double> pad_inner_diameter{};   // [m]
  std::optional<double> pad_outer_diameter{};   // [m]
  std::optional<double> pad_angle{};            // [rad]
  std::optional<double> pad_diameter{};         // [m]
  std::optional<double> pad_centre_diameter{};  // [m]
  std::optional<double> torque_pressure{};      // [Pa]
  std::optional<double> effective_diameter{};   // [m]
  std::optional<double> given_piston_area{};    // [m²]
  std::optional<double> given_pad_area{};       // [m²]
};

}  // namespace holdback::files
