// Prints a hand-made answer with everything in it, or the schema: for the test that holds one against the other.
#include <cstdio>
#include <string_view>

#include "holdback/report/report.hpp"
#include "unit/report/sample.hpp"

int main(int argc, char** argv) {
  const bool schema = argc > 1 && std::string_view(argv[1]) == "schema";
  const auto text = schema ? holdback::report::answer_schema() : holdback::report::json(holdback::sample::everything());
  std::fputs(text.c_str(), stdout);
}
