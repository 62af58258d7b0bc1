// Generated tables of jobs beside a sound stand. Rows that are jobs are sized, all others are refused with problems;
// nothing may throw.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "holdback/api/answer.hpp"
#include "holdback/report/report.hpp"
#include "stand_text.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const std::string stand = stand_text();
  holdback::api::Request request;
  request.command = "size";
  request.stand = {"stand.toml", stand};
  request.jobs = holdback::api::Source{"fuzz.csv", std::string(reinterpret_cast<const char*>(data), size)};
  request.brakes = 1;
  request.threads = 1;
  const holdback::Answer answer = holdback::api::answer(request);
  if (answer.outcome == holdback::Outcome::bad_input && answer.problems.empty()) std::abort();
  if (holdback::report::json(answer).empty()) std::abort();
  return 0;
}
