// Generated tables of entries. Those that are sound get an answer, all others problems; nothing may throw.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "holdback/api/answer.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/report/report.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  holdback::api::Request request;
  request.command = "history";
  request.history.emplace();
  request.history->entries = {"fuzz.csv", std::string(reinterpret_cast<const char*>(data), size)};
  const holdback::Answer answer = holdback::api::answer(request);
  if (answer.outcome == holdback::Outcome::bad_input && answer.problems.empty()) std::abort();
  if (holdback::report::json(answer).empty()) std::abort();
  if (answer.history && holdback::report::text(answer, {}).empty()) std::abort();
  holdback::draw::figures_of(answer, holdback::units::System::us);
  return 0;
}
