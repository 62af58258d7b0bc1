#include "holdback/results/motion.hpp"

namespace holdback {

std::string_view key_of(ControlKind kind) {
  switch (kind) {
    case ControlKind::hand:
      return "hand";
    case ControlKind::diameter:
      return "diameter";
    case ControlKind::load_cell:
      return "load cell";
    case ControlKind::dancer:
      break;
  }
  return "dancer";
}

std::string_view key_of(RunEnd end) {
  switch (end) {
    case RunEnd::done:
      return "scenario over";
    case RunEnd::core:
      return "core reached";
    case RunEnd::failed:
      break;
  }
  return "stopped by a fault";
}

std::string_view key_of(Method method) { return method == Method::stiff_steps ? "stiff" : "explicit"; }

}  // namespace holdback
