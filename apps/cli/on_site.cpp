#include "on_site.hpp"

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

#include "holdback/draw/cells.hpp"
#include "host.hpp"

namespace holdback::cli {

namespace {

/// "force=6.4 N" in two.
api::Reading reading_of(const std::string& word) {
  const std::size_t equals = word.find('=');
  if (equals == std::string::npos || equals == 0)
    throw Refusal("'" + word + "' is no reading; a reading is KEY=VALUE, such as force=6.4N");
  return {word.substr(0, equals), word.substr(equals + 1)};
}

api::MeasureRequest measure_request(const Settings& settings, Problems& problems) {
  api::MeasureRequest request;
  request.method = settings.topic;
  request.instruction = settings.instruction;
  for (const std::string& word : settings.readings) request.readings.push_back(reading_of(word));
  if (!settings.recording.empty()) request.recording = read_or_note(settings.recording, problems);
  return request;
}

/// How long a regular file is; 0 for anything else.
double bytes_in(const std::string& name) {
  std::error_code none;
  const auto size = std::filesystem::is_regular_file(name, none) ? std::filesystem::file_size(name, none) : 0;
  return none ? 0 : static_cast<double>(size);
}

/// The log as a stream; standard input for "-".
api::LogRequest log_request(const Settings& settings, Problems& problems) {
  const bool standard = settings.file == "-";
  std::shared_ptr<std::FILE> file(standard ? stdin : std::fopen(settings.file.c_str(), "rb"), [](std::FILE* open) {
    if (open != nullptr && open != stdin) std::fclose(open);
  });
  if (!file) {
    Problem problem;
    problem.file = settings.file;
    problem.what = {std::string("cannot be read: ") + std::strerror(errno)};
    problems.push_back(problem);
  }
  const auto read = [file](char* to, std::size_t most) { return std::fread(to, 1, most, file.get()); };
  return {
      standard ? "standard input" : settings.file, read, settings.columns, settings.rate, settings.from, settings.to,
      standard ? 0 : bytes_in(settings.file)};
}

}  // namespace

bool is_on_site(const Settings& settings) {
  return settings.command == "measure" || settings.command == "fit" || settings.command == "diagnose";
}

void read_on_site(const Settings& settings, api::Request& request, Problems& problems) {
  if (!settings.stand.empty()) request.stand = read_or_note(settings.stand, problems);
  if (settings.command == "measure") request.measure = measure_request(settings, problems);
  if (settings.command == "fit") request.fit = api::FitRequest{read_or_note(settings.file, problems), settings.write};
  if (settings.command == "diagnose") request.log = log_request(settings, problems);
  if (settings.write && settings.stand == "-") throw Refusal("--write needs a stand file; standard input has none");
  if (settings.stand.empty() && settings.command != "measure")
    throw Refusal(settings.command + " needs --stand FILE: the stand file");
}

void write_fitted_brake(const Answer& answer, const Settings& settings) {
  if (!settings.write || !answer.fit || !answer.fit->stand_file) return;
  const auto& changes = answer.fit->changes;
  if (!changes.empty()) write_file(*answer.fit->stand_file, settings.stand);
  std::fprintf(stderr, "holdback: %zu value%s changed in %s\n", changes.size(), changes.size() == 1 ? "" : "s",
               draw::plain(settings.stand).c_str());
}

}  // namespace holdback::cli
