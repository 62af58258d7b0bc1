// The core as one function for a page or any other JavaScript host: request text in, answer text out.
#include <cstdlib>
#include <cstring>
#include <string>

#include "holdback/api/answer.hpp"

/// Answers one request (JSON, UTF-8, ended by a zero byte). The answer is JSON of the same kind as the command line's,
/// in memory that the caller gives back with free(). Null only if there is no memory left for the answer.
extern "C" char* holdback_answer(const char* request_json) {
  const std::string answer = holdback::api::answer(request_json != nullptr ? request_json : "");
  char* text = static_cast<char*>(std::malloc(answer.size() + 1));
  if (text != nullptr) std::memcpy(text, answer.c_str(), answer.size() + 1);
  return text;
}
