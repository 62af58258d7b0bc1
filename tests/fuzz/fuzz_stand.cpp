// Generated stand files through the whole way: read, check, choose, write. Bytes that are a stand are sized, all others
// are refused with problems; nothing may throw, and the JSON writer throws on any number that is not finite.
#include <cstddef>
#include <cstdint>
#include <string>

#include "holdback/api/answer.hpp"
#include "holdback/report/report.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  holdback::api::Request request;
  request.command = "size";
  request.stand = {"fuzz.toml", std::string(reinterpret_cast<const char*>(data), size)};
  request.threads = 1;
  const holdback::Answer answer = holdback::api::answer(request);
  if (answer.outcome == holdback::Outcome::bad_input && answer.problems.empty()) __builtin_trap();
  if (holdback::report::json(answer).empty()) __builtin_trap();
  if (holdback::report::text(answer, {}).empty() && answer.problems.empty()) __builtin_trap();
  return 0;
}
