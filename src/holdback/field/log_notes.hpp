// What a diagnosis says beside its findings: its state, what was assumed, what a person must heed.
#pragma once

#include <array>

#include "holdback/field/log_stand.hpp"
#include "holdback/model/log.hpp"
#include "holdback/results/diagnosis.hpp"

namespace holdback::field {

/// Fails: a stop or a ramp does, or a tenth of the steady run lies outside of the window; tight: a hundredth does, or a
/// stop or ramp is; holds otherwise.
State state_of_log(const LogStand& stand, const Diagnosis& diagnosis);

/// Fills in assumptions and cautions.
void log_notes(const LogStand& stand, const std::array<bool, log_channels>& has, Diagnosis& diagnosis);

}  // namespace holdback::field
