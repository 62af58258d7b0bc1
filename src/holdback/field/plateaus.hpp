// Stretches over which the pressure stands still, and the steps between them: a hand on the regulator, or a regulator
// that sticks and jumps.
#pragma once

#include <optional>
#include <vector>

#include "holdback/field/log_rows.hpp"
#include "holdback/field/log_stand.hpp"

namespace holdback::field {

/// What the plateaus of a log tell together.
struct PlateauFacts {
  double steps{};          // [1] from one plateau to the next
  double flat{};           // [s] of steady running on plateaus of at least `least_flat`
  double steady{};         // [s] of steady running with a pressure
  double median_length{};  // [s] of a plateau
  double median_step{};    // [Pa] size of a step
  double tension_rise{};   // [1] highest ratio of tension from the beginning to the end of one plateau, in steady run
  double diameter_fall{};  // [1] ratio of diameter over that plateau, beginning over end
};

class PlateauFinder {
 public:
  explicit PlateauFinder(const LogStand& stand) : stand_(stand) {}

  void put(const LogBucket& bucket);
  void finish() { close(); }

  const std::vector<HandTurn>& turns() const { return turns_; }
  double turns_found() const { return found_; }
  PlateauFacts facts() const;
  static constexpr std::size_t most = 200;
  static constexpr double least_flat = 4;  // [s]

 private:
  struct Plateau {
    double begin{}, end{};
    Mean pressure{};
    double first_pressure{}, last_pressure{};
    Mean early_pressure{}, late_pressure{};  // of its first and its last second
    Mean early_tension{}, late_tension{};    // of the first and the last stretch of it
    double early_radius{}, late_radius{};
    double steady{};  // [s]
  };
  double tolerance(const LogBucket& bucket) const;
  void close();

  const LogStand& stand_;
  std::optional<Plateau> before_{};
  std::optional<Plateau> now_{};
  std::size_t off_{};  // buckets in a row that left it
  std::vector<HandTurn> turns_{};
  std::vector<double> lengths_{}, steps_{};
  double found_{}, flat_{}, steady_{}, rise_{1}, fall_{1};
};

}  // namespace holdback::field
