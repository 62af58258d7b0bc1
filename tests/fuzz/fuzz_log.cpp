// Generated logs: read whatever they are, in pieces of several sizes, with and without words of the user; short ones
// are judged too. Times must rise, blocks must be whole, nothing may throw.
#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <string>

#include "holdback/api/answer.hpp"
#include "holdback/draw/figures.hpp"
#include "holdback/draw/svg.hpp"
#include "holdback/files/read_log.hpp"
#include "holdback/report/report.hpp"
#include "stand_text.hpp"

namespace {

using holdback::LogBlock;
using holdback::LogChannel;
using holdback::files::LogOptions;
using holdback::files::LogReader;

holdback::files::LogBytes bytes_of(const std::string& text, std::size_t at_once) {
  return [&text, at_once, at = std::size_t{}](char* to, std::size_t most) mutable {
    const std::size_t some = std::min({most, at_once, text.size() - at});
    std::memcpy(to, text.data() + at, some);
    at += some;
    return some;
  };
}

void read(const std::string& text, std::size_t at_once, const LogOptions& options) {
  LogReader reader("fuzz.csv", bytes_of(text, at_once), options);
  double last = -1;
  double rows = 0;
  for (LogBlock block; reader.next(block);) {
    for (const auto& channel : block.channel)
      if (!channel.empty() && channel.size() != block.rows) std::abort();
    for (const double time : block.of(LogChannel::time)) {
      if (!(time > last)) std::abort();
      last = time;
    }
    rows += static_cast<double>(block.rows);
  }
  if (reader.reading().rows != rows && !has_errors(reader.problems())) std::abort();
  if (rows == 0 && !has_errors(reader.problems())) std::abort();
  if (holdback::report::problems_text(reader.problems(), {}).size() > 1'000'000) std::abort();
}

void judge(const std::string& text) {
  static const std::string stand = stand_text("/tests/bad/good.toml");
  holdback::api::Request request;
  request.command = "diagnose";
  request.stand = {"stand.toml", stand};
  request.threads = 1;
  request.log = holdback::api::LogRequest{};
  request.log->name = "fuzz.csv";
  request.log->read = bytes_of(text, 1'000);
  const holdback::Answer answer = holdback::api::answer(request);
  if (answer.outcome == holdback::Outcome::bad_input && answer.problems.empty()) std::abort();
  if (holdback::report::json(answer).empty()) std::abort();
  if (answer.outcome != holdback::Outcome::bad_input && holdback::report::text(answer, {}).empty()) std::abort();
  for (const auto& figure : holdback::draw::figures_of(answer, holdback::units::System::si))
    if (holdback::draw::svg(figure.scene).empty()) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(reinterpret_cast<const char*>(data), size);
  LogOptions options;
  options.threads = 1;
  read(text, 1'000'000, options);
  options.width = 0.5;
  options.columns = "time=1 [s],tension=2 [N]";
  read(text, 7, options);
  options.columns = "tension=tension";
  options.rate = "100 Hz";
  options.from = "1 s";
  read(text, 100, options);
  if (size < 20'000) judge(text);
  return 0;
}
