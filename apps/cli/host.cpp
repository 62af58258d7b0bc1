#include "host.hpp"

#include <fcntl.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <functional>
#include <memory>

namespace holdback::cli {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_bytes = 64U << 20U;  // of an input file
constexpr int widest = 100;
constexpr int narrowest = 72;

Problem unreadable(const std::string& name, const std::string& reason) {
  Problem problem;
  problem.what = {"cannot be read: " + reason};
  problem.file = name;
  return problem;
}

struct Closed {
  void operator()(std::FILE* file) const {
    if (file != stdin) std::fclose(file);
  }
};

/// Writes all bytes; false when the reader has gone. `path` is for the message.
bool write_all(int file, const std::string& text, const std::string& path) {
  std::size_t done = 0;
  while (done < text.size()) {
    const auto wrote = ::write(file, text.data() + done, text.size() - done);
    if (wrote < 0 && errno == EINTR) continue;
    if (wrote < 0 && errno == EPIPE) return false;
    if (wrote < 0) throw std::runtime_error(path + " cannot be written: " + std::strerror(errno));
    done += static_cast<std::size_t>(wrote);
  }
  return true;
}

[[noreturn]] void refuse_output(const std::string& path) {
  throw Refusal(path + " cannot be written: " + std::strerror(errno));
}

/// An open file that is closed at the end.
class Open {
 public:
  Open(int file, const std::string& path) : file_(file) {
    if (file_ < 0) refuse_output(path);
  }
  ~Open() { ::close(file_); }
  Open(const Open&) = delete;
  Open& operator=(const Open&) = delete;
  int file() const { return file_; }

 private:
  int file_;
};

/// A file beside the wanted one, taken away again unless it took its place.
class Beside {
 public:
  explicit Beside(const std::string& path) : name_(path + ".XXXXXX"), open_(::mkstemp(name_.data()), path) {}
  ~Beside() {
    if (!kept_) ::unlink(name_.c_str());
  }
  Beside(const Beside&) = delete;
  Beside& operator=(const Beside&) = delete;
  int file() const { return open_.file(); }
  void rename_to(const std::string& path) {
    const auto mask = ::umask(0);  // mkstemp makes files for the owner alone
    ::umask(mask);
    if (::fchmod(file(), 0666 & ~mask) != 0 || std::rename(name_.c_str(), path.c_str()) != 0) refuse_output(path);
    kept_ = true;
  }

 private:
  std::string name_;
  Open open_;
  bool kept_{};
};

bool is_set(const char* name) {
  const char* value = std::getenv(name);
  return value != nullptr && *value != '\0';
}

bool colour_on(int file, const std::string& when) {
  if (when != "auto") return when == "always";
  const char* terminal = std::getenv("TERM");
  const bool dumb = terminal != nullptr && std::string_view(terminal) == "dumb";
  return ::isatty(file) != 0 && !dumb && !is_set("NO_COLOR");
}

int columns_of(int file) {
  winsize size{};
  if (::isatty(file) == 0 || ::ioctl(file, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return widest;
  return std::clamp<int>(size.ws_col, narrowest, widest);
}

units::System system_of(const Settings& settings) {
  std::string word = settings.units;
  const bool from_environment = word.empty() && is_set("HOLDBACK_UNITS");
  if (from_environment) word = std::getenv("HOLDBACK_UNITS");
  if (from_environment && word != "si" && word != "us")
    throw Refusal("HOLDBACK_UNITS: '" + word + "' is not one of si, us");
  return word == "us" ? units::System::us : units::System::si;
}

}  // namespace

std::variant<api::Source, Problem> read(const std::string& path) {
  const bool standard = path == "-";
  const std::string name = standard ? "standard input" : path;
  std::error_code none;
  if (!standard && fs::is_directory(path, none)) return unreadable(name, "it is a folder");
  const std::unique_ptr<std::FILE, Closed> file(standard ? stdin : std::fopen(path.c_str(), "rb"));
  if (!file) return unreadable(name, std::strerror(errno));
  std::string text;
  std::array<char, 65536> chunk{};
  for (std::size_t got = chunk.size(); got == chunk.size();) {
    got = std::fread(chunk.data(), 1, chunk.size(), file.get());
    text.append(chunk.data(), got);
    if (text.size() > most_bytes) return unreadable(name, "it is larger than 64 MB");
  }
  if (std::ferror(file.get()) != 0) return unreadable(name, std::strerror(errno));
  return api::Source{name, text};
}

api::Source read_or_note(const std::string& path, Problems& problems) {
  auto read_file = read(path);
  if (auto* problem = std::get_if<Problem>(&read_file)) {
    problems.push_back(std::move(*problem));
    return {};
  }
  return std::get<api::Source>(std::move(read_file));
}

void write_file(const std::string& bytes, const std::string& path) {
  std::error_code none;
  if (fs::exists(path, none) && !fs::is_regular_file(path, none)) {  // a device or a pipe is written as it is
    const Open open(::open(path.c_str(), O_WRONLY | O_CLOEXEC), path);
    write_all(open.file(), bytes, path);
    return;
  }
  const auto target = fs::canonical(path, none);  // where a link leads; the link stays
  const std::string place = none ? path : target.string();
  Beside beside(place);
  write_all(beside.file(), bytes, place);
  beside.rename_to(place);
}

void write(const std::string& text, const Settings& settings) {
  if (settings.out.empty()) {
    write_all(STDOUT_FILENO, text, "standard output");
  } else {
    write_file(text, settings.out);
  }
}

void make_folder(const std::string& path) {
  std::error_code error;
  fs::create_directories(path, error);
  std::error_code none;
  if (!fs::is_directory(path, none)) throw Refusal("the folder " + path + " cannot be made: " + error.message());
}

void write_in(const std::string& folder, const std::string& name, const std::string& text) {
  write_file(text, (fs::path(folder) / name).string());
}

bool exists(const std::string& path) {
  std::error_code none;
  return fs::exists(path, none);
}

void protect_inputs(const Settings& settings) {
  const auto same = [](const std::string& a, const std::string& b) {
    std::error_code none;
    return !a.empty() && !b.empty() && fs::equivalent(a, b, none);
  };
  for (const auto& [option, output] : {std::pair{"--out ", settings.out}, std::pair{"--xlsx ", settings.xlsx}}) {
    if (same(output, settings.file) || same(output, settings.jobs) || same(output, settings.stand) ||
        same(output, settings.recording))
      throw Refusal(option + output + " would replace the file that is read");
  }
  const bool one_file = !settings.out.empty() && settings.out == settings.xlsx;
  if (one_file || same(settings.out, settings.xlsx)) throw Refusal("--out and --xlsx name the same file");
}

namespace {

/// A line on standard error that is written over, and wiped away with the last who tells of progress.
class ProgressLine {
 public:
  ProgressLine() = default;
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  ~ProgressLine() {
    if (shown_) std::fputs("\r\033[K", stderr);
  }

  // Work that is soon done needs no telling.
  void tell(const std::string& what, double share) {
    const auto now = Clock::now();
    if (now - begun_ < std::chrono::milliseconds(500) || now - last_ < std::chrono::milliseconds(100)) return;
    last_ = now;
    shown_ = true;
    std::fprintf(stderr, "\r\033[Kholdback: %s, %.0f %%", what.c_str(), 100 * share);
    std::fflush(stderr);
  }

 private:
  using Clock = std::chrono::steady_clock;
  Clock::time_point begun_{Clock::now()};
  Clock::time_point last_{};
  bool shown_{};
};

}  // namespace

std::function<void(const std::string&, double)> progress_bar() {
  if (::isatty(STDERR_FILENO) == 0) return {};
  const auto line = std::make_shared<ProgressLine>();
  return [line](const std::string& what, double share) { line->tell(what, share); };
}

Styles styles_of(const Settings& settings) {
  const auto system = system_of(settings);
  const bool to_file = !settings.out.empty();
  Styles styles;
  styles.out = {system, colour_on(STDOUT_FILENO, to_file ? "never" : settings.colour),
                to_file ? widest : columns_of(STDOUT_FILENO), settings.all};
  styles.err = {system, colour_on(STDERR_FILENO, settings.colour), columns_of(STDERR_FILENO), settings.all};
  return styles;
}

}  // namespace holdback::cli
