// Gives a fuzz target every file of the folders named, and each cut at a few places: what a fuzzer does, once and
// always the same. Any fault of the target ends the program.
#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace {

void feed(const std::string& bytes) {
  LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

std::string read(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

int main(int count, char** arguments) {
  int fed = 0;
  for (int i = 1; i < count; ++i) {
    if (!std::filesystem::is_directory(arguments[i])) continue;
    for (const auto& entry : std::filesystem::directory_iterator(arguments[i])) {
      if (!entry.is_regular_file() || entry.path().extension() == ".expected") continue;
      const std::string bytes = read(entry.path());
      feed(bytes);
      for (const std::size_t part : {1U, 2U, 5U}) feed(bytes.substr(0, bytes.size() * part / 7));
      fed += 4;
    }
  }
  feed({});
  std::cout << fed + 1 << " inputs\n";
  return fed > 0 ? 0 : 1;
}
