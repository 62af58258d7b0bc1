// How sure the tension is, by linear propagation or by draws, and how it lies in the window of the job.
#pragma once

#include <string>

#include "holdback/field/measure_inputs.hpp"
#include "holdback/field/measure_models.hpp"

namespace holdback::field {

/// The tension by both ways. Where the draws show the linear interval not to be as good as one digit of the uncertainty
/// ([jcgm101], 8), they have the say: interval and probabilities are theirs.
class Sureness {
 public:
  Sureness(const MeasureModel& model, const std::vector<numerics::UnsureInput>& inputs);

  const numerics::Propagated& linear() const { return linear_; }
  bool by_draws() const { return check_ && !check_->agrees; }
  const std::optional<DrawnCheck>& check() const { return check_; }
  double low() const { return by_draws() ? check_->low : linear_.value - linear_expanded(); }
  double high() const { return by_draws() ? check_->high : linear_.value + linear_expanded(); }
  /// Draws for which the model gave no number.
  int lost() const { return drawn_.lost; }
  /// Probability that the tension is below a bound [N], or above it.
  double below(double bound) const;
  double above(double bound) const;

 private:
  double linear_expanded() const;

  numerics::Propagated linear_{};
  numerics::Drawn drawn_{};
  std::optional<DrawnCheck> check_{};
};

/// How the tension lies in the window of the job, which must be there.
MeasuredWindow window_of(const MeasureInput& input, const Sureness& sure);

}  // namespace holdback::field
