// A signal taken again at other places: fewer samples a second, or samples at equal turns instead of equal times. What
// is too fast for the new samples is filtered out first, so that it does not come back as something slow.
#pragma once

#include <cstddef>
#include <functional>
#include <vector>

namespace holdback::numerics {

/// One sample for each `factor` that come in, through a windowed sinc of 16 lobes that cuts at 0.8 of half the new
/// rate (Kaiser, 80 dB beyond half of it). A factor of 1 passes everything. [oppenheim2010]
class Decimator {
 public:
  explicit Decimator(std::size_t factor);

  /// A sample in; true when one came out, then in `value`. It belongs to the middle of the filter, delay() before.
  bool put(double sample, double& value);
  void cut();                                                  // what comes next does not belong to what was before
  double delay() const { return static_cast<double>(half_); }  // samples that came in

 private:
  std::size_t factor_;
  std::size_t half_;
  std::vector<double> tap_{};
  std::vector<double> ring_{};  // twice over, so that the filter reads it in one piece
  std::size_t at_{};
  std::size_t filled_{};
  std::size_t due_{};
};

/// Samples at equal times become samples at equal steps of an angle that rises with time (or of any other measure, such
/// as web run). Windowed sinc of `lobes` to either side; where the new samples lie wider apart than the old ones, it
/// cuts at 0.8 of half their rate. The value of a constant signal is kept exactly.
class EvenSteps {
 public:
  using Take = std::function<void(double value)>;

  /// `step` > 0 of the angle from one new sample to the next.
  EvenSteps(double step, Take take, std::size_t lobes = 12);

  /// A sample and the angle at it, which must not fall; where it stands still, nothing comes out.
  void put(double sample, double angle);
  void cut();

 private:
  void give(double place, double samples_a_step);

  double step_;
  Take take_;
  std::size_t lobes_;
  std::vector<double> full_{};  // kernel over 0 … lobes, that cuts at half the old rate
  std::vector<double> cut_{};   // at 0.8 of half the new one
  std::vector<double> sample_{};
  std::vector<double> angle_{};
  double next_{};
  std::size_t at_{};      // the angle due next lies between this sample and the one after it
  std::size_t behind_{};  // samples that the kernel reaches back
  bool begun_{};
};

/// Values of a cubic spline (not-a-knot ends) through points at rising places, at other places within them.
/// std::invalid_argument for fewer than 4 points or places that do not rise.
std::vector<double> cubic_spline(const std::vector<double>& x, const std::vector<double>& y,
                                 const std::vector<double>& at);

}  // namespace holdback::numerics
