#include "page.hpp"

#include <cstddef>

// Laid into the program by page_data.S.
extern "C" const char holdback_page_begin[];
extern "C" const char holdback_page_end[];

namespace holdback::cli {

std::string_view page() {
  return {holdback_page_begin, static_cast<std::size_t>(holdback_page_end - holdback_page_begin)};
}

}  // namespace holdback::cli
