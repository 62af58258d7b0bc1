// The figure of a fitted brake: every reading on it, outliers by shape and words, nothing out of the page.
#include <gtest/gtest.h>

#include <algorithm>

#include "unit/draw/sound.hpp"

namespace holdback::draw {
namespace {

BrakeFit sample() {
  BrakeFit fit;
  fit.title = "Slitter (invented)";
  fit.fit = {"disc", "middle", 1, 4};
  fit.torque_per_pressure = {1e-4, 0.98e-4, 1.02e-4, 1.05e-4};
  fit.band_low = 0.8;
  fit.band_high = 1.2;
  fit.threshold = {1e4, 0.8e4, 1.2e4, 1e4};
  fit.drag = {1, 0.8, 1.2, 1};
  fit.hysteresis = FittedNumber{4e3, 3e3, 5e3, 0};
  fit.verdicts.push_back({BrakeCause::as_expected, 0.98, "", 0, {"The brake does what the file says."}, {}, {}});
  int row = 2;
  for (const int pairs : {2, 4})
    for (const auto course : {PressureCourse::rising, PressureCourse::falling})
      for (const double bar : {1.0, 2.0, 3.0}) {
        const double side = course == PressureCourse::rising ? 2e3 : -2e3;
        const double fitted = 1 + 1e-4 * pairs * (bar * 1e5 - 1e4 - side);
        fit.readings.push_back({row++, bar * 1e5, pairs, course, fitted + 0.3, fitted, 0.3, false});
      }
  fit.readings.push_back({row, 0, 4, PressureCourse::unknown, 1.1, 1, 0.1, false});
  return fit;
}

bool has_text(const Scene& scene, const std::string& text) {
  return std::any_of(scene.marks.begin(), scene.marks.end(), [&](const Mark& mark) {
    const auto* label = std::get_if<Label>(&mark.shape);
    return label != nullptr && label->text == text;
  });
}

TEST(fit_figure, is_sound_in_both_systems_and_without_a_fit) {
  BrakeFit none = sample();
  none.torque_per_pressure = {};
  BrakeFit negative = sample();
  negative.threshold.value = -3e4;
  for (const auto system : {units::System::si, units::System::us})
    for (const BrakeFit& fit : {sample(), none, negative}) expect_sound(fit_figure(fit, system));
}

TEST(fit_figure, marks_what_was_left_out_by_shape_and_words) {
  BrakeFit fit = sample();
  const auto segments = [](const Scene& scene) {
    return std::count_if(scene.marks.begin(), scene.marks.end(), [](const Mark& mark) {
      return std::holds_alternative<Segment>(mark.shape) && mark.style.role == MarkRole::bad;
    });
  };
  EXPECT_EQ(segments(fit_figure(fit, units::System::si)), 0);
  fit.readings[5].outlier = true;
  fit.outliers = 1;
  const Scene scene = fit_figure(fit, units::System::si);
  EXPECT_EQ(segments(scene), 2);
  EXPECT_TRUE(has_text(scene, "row 7, left out"));
  EXPECT_TRUE(has_text(scene, "fitted, 4 pairs"));
  expect_sound(scene);
}

TEST(fit_figure, tells_rising_from_falling_by_the_way_a_triangle_points) {
  const Scene scene = fit_figure(sample(), units::System::si);
  int up = 0;
  int down = 0;
  for (const Mark& mark : scene.marks) {
    const auto* triangle = std::get_if<Polygon>(&mark.shape);
    if (triangle == nullptr || triangle->points.size() != 3 || mark.style.role != MarkRole::text) continue;
    (triangle->points[2].y < triangle->points[0].y ? up : down) += 1;
  }
  EXPECT_EQ(up, 6);
  EXPECT_EQ(down, 6);
}

TEST(figures_of, a_fit_is_one_figure) {
  Answer answer;
  answer.fit = sample();
  EXPECT_EQ(files(answer), std::vector<std::string>{"fit"});
  answer.fit->readings.clear();
  EXPECT_TRUE(files(answer).empty());
}

}  // namespace
}  // namespace holdback::draw
