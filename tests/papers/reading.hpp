// Reads a PDF back with tools that are none of ours: poppler and qpdf.
#pragma once

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

namespace holdback {

struct Ran {
  int code{};
  std::string output{};
};

/// Runs a command line; what it says on both outputs.
inline Ran ran(const std::string& command) {
  Ran out;
  auto* pipe = popen((command + " 2>&1").c_str(), "r");
  std::array<char, 4096> part{};
  for (std::size_t got = 0; (got = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
    out.output.append(part.data(), got);
  const int status = pclose(pipe);
  out.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return out;
}

struct Word {
  double left{};
  double top{};
  double right{};
  double bottom{};
  std::string text{};
  int page{};
};

/// A PDF on disk, gone when the test is.
class File {
 public:
  explicit File(const std::string& bytes) {
    static int count = 0;
    path_ = std::filesystem::temp_directory_path() /
            ("holdback-papers-" + std::to_string(getpid()) + "-" + std::to_string(++count) + ".pdf");
    std::ofstream(path_, std::ios::binary) << bytes;
  }
  File(const File&) = delete;
  File& operator=(const File&) = delete;
  ~File() { std::filesystem::remove(path_); }

  std::string name() const { return path_.string(); }
  Ran tool(const std::string& command, const std::string& after = {}) const {
    return ran(command + " " + name() + " " + after);
  }
  std::string text(const std::string& options = {}) const { return tool("pdftotext -layout " + options, "-").output; }
  Ran look() const { return tool("/usr/bin/python3 -B " HOLDBACK_SOURCE_DIR "/tests/papers/look.py"); }

  const std::vector<Word>& words() const {
    if (!words_.empty()) return words_;
    std::vector<Word> found;
    const auto boxes = tool("pdftotext -bbox", "-").output;
    int page = 0;
    for (std::size_t at = 0; (at = boxes.find('<', at)) != std::string::npos; ++at) {
      if (boxes.compare(at, 6, "<page ") == 0) ++page;
      Word word;
      if (std::sscanf(boxes.c_str() + at, R"(<word xMin="%lf" yMin="%lf" xMax="%lf" yMax="%lf">)", &word.left,
                      &word.top, &word.right, &word.bottom) != 4) {
        continue;
      }
      const auto start = boxes.find('>', at) + 1;
      word.text = boxes.substr(start, boxes.find('<', start) - start);
      word.page = page;
      found.push_back(word);
    }
    words_ = found;
    return words_;
  }

 private:
  std::filesystem::path path_{};
  mutable std::vector<Word> words_{};
};

inline std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) ++count;
  return count;
}

/// What must be true of every paper: a valid file, every font in it, nothing on each other or out of its place.
inline void expect_sound(const File& file) {
  const auto checked = file.tool("qpdf --check");
  EXPECT_EQ(checked.code, 0) << checked.output;
  const auto fonts = file.tool("pdffonts").output;
  for (std::size_t at = fonts.find("---\n"); at + 4 < fonts.size();) {
    const auto start = fonts.find('\n', at) + 1;
    if (start >= fonts.size()) break;
    const auto line = fonts.substr(start, fonts.find('\n', start) - start);
    EXPECT_NE(line.find(" yes yes yes "), std::string::npos) << line;  // embedded, a subset, readable back
    at = start;
  }
  const auto looked = file.look();
  EXPECT_EQ(looked.code, 0) << looked.output;
}

}  // namespace holdback
