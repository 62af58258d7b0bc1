// Generated tables of readings beside a sound stand. What are readings is fitted and written into the stand, all else
// is refused with problems; nothing may throw, and a changed stand must read without an error.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "holdback/api/answer.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"
#include "holdback/files/stand_file.hpp"
#include "holdback/report/report.hpp"
#include "stand_text.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size > 20'000) return 0;  // many readings take long, and tell no more
  static const std::string stand = stand_text();
  holdback::api::Request request;
  request.command = "fit";
  request.stand = {"stand.toml", stand};
  request.fit = holdback::api::FitRequest{{"fuzz.csv", std::string(reinterpret_cast<const char*>(data), size)}, true};
  request.brake = "disc 330";
  request.grade = "middle";
  request.threads = 1;
  const holdback::Answer answer = holdback::api::answer(request);
  if (answer.outcome == holdback::Outcome::bad_input && answer.problems.empty()) std::abort();
  if (holdback::report::json(answer).empty()) std::abort();
  for (const auto& figure : holdback::draw::figures_of(answer, holdback::units::System::si))
    if (holdback::draw::svg(figure.scene).empty()) std::abort();
  if (answer.fit && answer.fit->stand_file &&
      holdback::has_errors(holdback::files::read_stand(*answer.fit->stand_file, "stand.toml").problems))
    std::abort();
  return 0;
}
