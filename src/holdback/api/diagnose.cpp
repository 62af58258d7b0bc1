#include <algorithm>
#include <optional>
#include <string>

#include "holdback/api/log_stand.hpp"
#include "holdback/api/on_site.hpp"
#include "holdback/api/request_problem.hpp"
#include "holdback/api/stand_job.hpp"
#include "holdback/field/diagnose.hpp"
#include "holdback/files/read_log.hpp"

namespace holdback::api {

namespace {

/// The job that ran: the one asked for, or the only one of the stand; else a problem that names them.
std::optional<std::string> job_of(const Stand& stand, const Request& request, Problems& problems) {
  if (!request.job.empty()) return request.job;
  if (stand.jobs.size() == 1) return stand.jobs.front().name;
  std::string names;
  for (const Job& job : stand.jobs) names += (names.empty() ? "" : ", ") + job.name;
  problems.push_back(request_problem("a log is held against one job, and the stand has several", "--job", "",
                                     "the job that ran, one of: " + names));
  return std::nullopt;
}

double width_of(const Stand& stand, const std::string& name) {
  const auto job = std::find_if(stand.jobs.begin(), stand.jobs.end(), [&](const Job& one) { return one.name == name; });
  return job->web.width;
}

/// Reads the log through, block by block, and judges it on the way; the next rows are parsed meanwhile.
void judge(const LogRequest& log, const Request& request, files::LogReader& reader, field::LogJudge& judge) {
  LogBlock block;
  while (reader.next(block)) {
    judge.put(block);
    if (request.progress && log.bytes > 0) request.progress("the log", std::min(1.0, reader.bytes() / log.bytes));
  }
}

// Rows closer than any recorder of a line writes them: the times are in another unit than the head says.
void warn_of_haste(const LogReading& reading, const std::string& name, Problems& problems) {
  if (!(reading.interval > 0 && reading.interval < least_log_interval)) return;
  Problem problem = request_problem("rows follow each other faster than a line is recorded; spectra mean nothing then",
                                    "time", units::show(reading.interval, Quantity::duration, units::System::si),
                                    "times in the unit that the head names");
  problem.file = name;
  problem.severity = Severity::warning;
  problems.push_back(std::move(problem));
}

}  // namespace

void diagnose(const Stand& stand, const Request& request, Answer& answer) {
  const LogRequest& log = *request.log;
  const auto name = job_of(stand, request, answer.problems);
  if (!name) {
    answer.outcome = Outcome::bad_input;
    return;
  }
  Request asked = request;
  asked.job = *name;
  const StandJob job(stand, asked);
  field::LogStand facts = log_stand_of(stand, job);
  facts.log = log.name;
  field::LogJudge log_judge(facts);
  files::LogReader reader(log.name, log.read,
                          {log.columns, log.rate, log.from, log.to, width_of(stand, *name),
                           static_cast<std::size_t>(std::max(0, request.threads))});
  judge(log, request, reader, log_judge);
  answer.columns = reader.columns();
  answer.problems.insert(answer.problems.end(), reader.problems().begin(), reader.problems().end());
  if (has_errors(answer.problems)) {
    answer.outcome = Outcome::bad_input;
    return;
  }
  answer.diagnosis = log_judge.finish();
  answer.diagnosis->reading = reader.reading();
  warn_of_haste(answer.diagnosis->reading, log.name, answer.problems);
}

}  // namespace holdback::api
