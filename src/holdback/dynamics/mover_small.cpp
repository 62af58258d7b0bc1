// Movers of one span, whose idlers follow the line.
#include <stdexcept>

#include "holdback/dynamics/mover_chain.hpp"
#include "holdback/dynamics/mover_of.hpp"

namespace holdback::dynamics {

namespace {

template <bool HasDancer>
std::unique_ptr<Mover> small(const Plant& plant, const Start& start, const MoverOptions& options) {
  using L = Layout<1, HasDancer>;
  if (options.steps == Steps::explicit_steps)
    return std::make_unique<MoverOf<L, numerics::DormandPrince<L::size>>>(plant, start, options);
  return std::make_unique<MoverOf<L, numerics::Rodas<L::size, RateSlopes<L>>>>(plant, start, options);
}

}  // namespace

std::unique_ptr<Mover> make_mover(const Plant& plant, const Start& start, const MoverOptions& options) {
  const PathPlant& path = plant.path;
  if (path.spans.empty() || path.spans.size() > most_spans || path.spans.size() != path.idlers.size() + 1)
    throw std::invalid_argument("a path needs one span more than idlers, and eight at most");
  if (!(path.stiffness > 0)) throw std::invalid_argument("a web needs stiffness");
  if (path.spans.size() > 1) return chain_mover(plant, start, options);
  return path.dancer ? small<true>(plant, start, options) : small<false>(plant, start, options);
}

Plant with_fewer_idlers(const Plant& plant) {
  Plant fewer = plant;
  PathPlant& path = fewer.path;
  while (path.spans.size() > most_spans) {
    const std::size_t k = path.idlers.size() - 2;  // joined with the last: inertia as mass at the web
    IdlerPlant& kept = path.idlers[k];
    const IdlerPlant& gone = path.idlers[k + 1];
    kept.inertia += gone.inertia * (kept.radius * kept.radius) / (gone.radius * gone.radius);
    kept.drag += gone.drag * kept.radius / gone.radius;
    path.spans[k + 1] += path.spans[k + 2];
    path.spans.pop_back();
    path.idlers.pop_back();
  }
  const std::size_t last = path.spans.size() - 1;
  path.cell_span = std::min(path.cell_span, last);
  if (path.dancer) path.dancer->span = std::min(path.dancer->span, last);
  return fewer;
}

MethodChoice choose_method(const Plant& plant, double period) {
  const double fastest = fastest_idler_mode(plant.path);
  return {fastest * period > stiff_turn ? Steps::stiff_steps : Steps::explicit_steps, fastest};
}

}  // namespace holdback::dynamics
