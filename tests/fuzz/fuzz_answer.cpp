// The façade under generated requests: whatever the bytes, it answers. A crash, a hang or a leak is a defect.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "holdback/api/answer.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view request(reinterpret_cast<const char*>(data), size);
  if (holdback::api::answer(request).empty()) std::abort();
  return 0;
}
