// Generated quantities for every kind: a value comes back through its own text, all else is refused with a reason.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>
#include <variant>

#include "holdback/units/units.hpp"

using holdback::Quantity;
namespace units = holdback::units;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const auto kind = static_cast<Quantity>(data[0] % (static_cast<int>(Quantity::frequency) + 1));
  const std::string_view text(reinterpret_cast<const char*>(data + 1), size - 1);
  const units::Parsed parsed = units::parse(text, kind);
  if (const auto* fault = std::get_if<units::Fault>(&parsed)) {
    if (fault->what.empty()) std::abort();
    return 0;
  }
  const double value = std::get<double>(parsed);
  if (!std::isfinite(value)) std::abort();
  for (const units::System system : {units::System::si, units::System::us})
    if (units::show(value, kind, system).empty()) std::abort();
  return 0;
}
