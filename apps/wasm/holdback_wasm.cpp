// The core for a page or any other JavaScript host: request text in, answer text out, and live runs.
#include <cstdlib>
#include <cstring>
#include <string>

#include "holdback/api/answer.hpp"
#include "holdback/api/live.hpp"

namespace {

/// Memory of its own for the host to give back; null when there is none left.
char* given(const std::string& answer) {
  char* text = static_cast<char*>(std::malloc(answer.size() + 1));
  if (text != nullptr) std::memcpy(text, answer.c_str(), answer.size() + 1);
  return text;
}

holdback::api::LiveRuns& runs() {
  static holdback::api::LiveRuns all;
  return all;
}

}  // namespace

/// Answers one request (JSON, UTF-8, ended by a zero byte). The answer is JSON of the same kind as the command line's,
/// in memory that the caller gives back with free(). Null only if there is no memory left for the answer.
extern "C" char* holdback_answer(const char* request_json) {
  return given(holdback::api::answer(request_json != nullptr ? request_json : ""));
}

/// Live runs (holdback/api/live.hpp): open, advance, close. Texts as above.
extern "C" char* holdback_live_open(const char* request_json) {
  return given(runs().open(request_json != nullptr ? request_json : ""));
}
extern "C" char* holdback_live_advance(const char* json) { return given(runs().advance(json != nullptr ? json : "")); }
extern "C" void holdback_live_close(int run) { runs().close(run); }
