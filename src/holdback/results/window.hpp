// The tension window of a job, bound by bound: what sets its lower and its upper end, at which speed, over the roll.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "holdback/results/limit.hpp"

namespace holdback {

/// What may bound the tension of a web. Lower bounds first.
enum class BoundId {
  traction,     // an idler must still be driven through the film of air that the web carries in
  sag,          // the longest level span may not hang too deep
  balance,      // the roll must not swing by its own out-of-round weight at standstill
  usual_least,  // the trade's tables
  strength,     // share of yield
  strain,       // strain in use
  cinching,     // the roll may not slip inside itself
  usual_most,   // the trade's tables
};
inline constexpr BoundId last_bound = BoundId::usual_most;

std::string_view key_of(BoundId bound);   // "usual_least"
std::string_view name_of(BoundId bound);  // "usual in the trade"
bool is_lower(BoundId bound);

/// One bound at the job's speed, where it binds hardest over the roll.
struct WindowBound {
  BoundId id{};
  double tension{};   // [N] over the whole width
  double diameter{};  // [m] of the roll where it binds; 0 when the roll is no matter
  LoadCase load_case{LoadCase::run};
  std::string part{};  // the idler that needs most; empty otherwise
  Known known{Known::formula};
};

/// The window at one speed, or at one diameter. An end that nothing bounds is absent.
struct WindowAt {
  double speed{};               // [m/s]
  double diameter{};            // [m]; 0 where the hardest of the roll is meant
  std::optional<double> low{};  // [N]
  std::optional<BoundId> low_by{};
  std::optional<double> high{};  // [N]
  std::optional<BoundId> high_by{};
};

struct TensionWindow {
  std::vector<WindowBound> bounds{};
  std::vector<WindowAt> over_speed{};  // from slow to the job's speed
  std::vector<WindowAt> over_roll{};   // from core to full, at the job's speed
};

}  // namespace holdback
