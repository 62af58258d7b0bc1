#include "holdback/dynamics/mover_chain.hpp"

#include "holdback/dynamics/mover_of.hpp"

namespace holdback::dynamics {

namespace {

template <bool HasDancer>
std::unique_ptr<Mover> chain(const Plant& plant, const Start& start, const MoverOptions& options) {
  using L = Layout<most_spans, HasDancer>;
  if (options.steps == Steps::explicit_steps)
    return std::make_unique<MoverOf<L, numerics::DormandPrince<L::size>>>(plant, start, options);
  return std::make_unique<MoverOf<L, numerics::Rodas<L::size, RateSlopes<L>>>>(plant, start, options);
}

}  // namespace

std::unique_ptr<Mover> chain_mover(const Plant& plant, const Start& start, const MoverOptions& options) {
  return plant.path.dancer ? chain<true>(plant, start, options) : chain<false>(plant, start, options);
}

}  // namespace holdback::dynamics
