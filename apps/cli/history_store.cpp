#include "history_store.hpp"

#include <array>
#include <filesystem>
#include <map>

#include "holdback/model/date.hpp"
#include "holdback/model/history_fields.hpp"

namespace holdback::cli {

namespace {

namespace fs = std::filesystem;
using sqlite::Statement;
using sqlite::Transaction;

constexpr long long application = 0x48624831;      // "HbH1" in the head of the file
constexpr long long largest_checked = 32LL << 20;  // [bytes] up to which the whole file is checked when it is opened

/// What brings a file from one version to the next; the first makes an empty file one of version 1.
constexpr std::array<const char*, history_version> steps{
    "CREATE TABLE stand (id INTEGER PRIMARY KEY, name TEXT NOT NULL UNIQUE) STRICT;"
    "CREATE TABLE entry (id INTEGER PRIMARY KEY, stand INTEGER NOT NULL REFERENCES stand (id),"
    " date TEXT NOT NULL, kind TEXT NOT NULL) STRICT;"
    "CREATE TABLE value (entry INTEGER NOT NULL REFERENCES entry (id), key TEXT NOT NULL, number REAL, text TEXT,"
    " PRIMARY KEY (entry, key), CHECK ((number IS NULL) <> (text IS NULL))) STRICT, WITHOUT ROWID;",

    "ALTER TABLE entry ADD COLUMN corrects INTEGER REFERENCES entry (id);"
    "CREATE UNIQUE INDEX corrected_once ON entry (corrects);"
    "CREATE TRIGGER entry_stays BEFORE UPDATE ON entry BEGIN SELECT RAISE (ABORT, 'entries are never changed'); END;"
    "CREATE TRIGGER entry_is_kept BEFORE DELETE ON entry BEGIN SELECT RAISE (ABORT, 'entries are never deleted'); END;"
    "CREATE TRIGGER value_stays BEFORE UPDATE ON value BEGIN SELECT RAISE (ABORT, 'entries are never changed'); END;"
    "CREATE TRIGGER value_is_kept BEFORE DELETE ON value BEGIN SELECT RAISE (ABORT, 'entries are never deleted'); "
    "END;"};

StoreFault fault_of(const std::string& path, const std::string& what, const std::string& accepted) {
  StoreFault fault;
  fault.problem.file = path;
  fault.problem.what = {what};
  fault.problem.accepted = {accepted};
  return fault;
}

/// The file, when it may be opened at all.
std::string checked_path(const std::string& path, bool adding) {
  std::error_code none;
  if (fs::is_directory(path, none)) throw fault_of(path, "cannot be read: it is a folder", "a file of histories");
  if (!adding && !fs::exists(path, none))
    throw fault_of(path, "cannot be read: there is no such file", "a file that `history add` has made");
  return path;
}

std::string in_words(const sqlite::Fault& fault) {
  switch (fault.code() & 0xFF) {
    case SQLITE_NOTADB:
      return "this is no history, and it is left as it is";
    case SQLITE_CORRUPT:
      return std::string("the file is damaged: ") + fault.what();
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return "another program holds the file; nothing was written";
    case SQLITE_READONLY:
      return "the file may not be written";
    case SQLITE_CANTOPEN:
      return "the file cannot be opened";
    case SQLITE_FULL:
      return "the disk is full; nothing was written";
    default:
      return fault.what();
  }
}

}  // namespace

HistoryStore::HistoryStore(const std::string& path, For purpose) try
    : path_(checked_path(path, purpose == For::adding)), connection_(path, purpose == For::adding) {
  try {
    connection_.run("PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL; PRAGMA trusted_schema = OFF");
    const State state = [&] {
      const Transaction together(connection_, false);
      return examine();
    }();
    if (state == State::fresh && purpose == For::reading)
      refuse("the file is empty: nothing is kept in it yet", "`history add` makes the first entry");
    if (state == State::ours && pragma("PRAGMA user_version") < history_version) {
      Transaction transaction(connection_, true);
      bring_up_to_date(examine());
      transaction.commit();
    }
  } catch (const sqlite::Fault& fault) {
    refuse(fault);
  }
} catch (const sqlite::Fault& fault) {
  throw fault_of(path, in_words(fault), "a file of histories, in a folder that may be written");
}

void HistoryStore::refuse(const std::string& what, const std::string& accepted) const {
  throw fault_of(path_, what, accepted);
}

void HistoryStore::refuse(const sqlite::Fault& fault) const {
  refuse(in_words(fault), "a file that `history add` has made");
}

long long HistoryStore::pragma(const char* statement) {
  Statement asked(connection_, statement);
  return asked.step() ? asked.count(0) : 0;
}

/// Is it ours, or nobody's yet? All else is refused.
HistoryStore::State HistoryStore::examine() {
  const long long mark = pragma("PRAGMA application_id");
  const long long version = pragma("PRAGMA user_version");
  if (mark == 0 && version == 0 && pragma("SELECT count(*) FROM sqlite_master") == 0) return State::fresh;
  if (mark != application)
    refuse("this is a database of another program, and it is left as it is", "a file that `history add` has made");
  if (version > history_version)
    refuse("the file is of version " + std::to_string(version) + ", written by a newer program; it is left as it is",
           "version " + std::to_string(history_version) + " or older; a newer holdback reads it");
  if (version < 1) refuse("the file has no version; it is damaged", "a file that `history add` has made");
  if (pragma("PRAGMA page_count") * pragma("PRAGMA page_size") <= largest_checked) {
    Statement check(connection_, "PRAGMA quick_check(1)");
    const std::string found = check.step() ? check.text(0) : "ok";
    if (found != "ok") refuse("the file is damaged: " + found, "a copy that was kept");
    Statement keys(connection_, "PRAGMA foreign_key_check");
    if (keys.step()) refuse("the file is damaged: an entry has lost what it belongs to", "a copy that was kept");
  }
  return State::ours;
}

/// Inside a transaction: every step that is missing, in order.
void HistoryStore::bring_up_to_date(State state) {
  const auto from = state == State::fresh ? 0 : static_cast<std::size_t>(pragma("PRAGMA user_version"));
  for (std::size_t step = from; step < steps.size(); ++step) connection_.run(steps[step]);
  connection_.run(("PRAGMA application_id = " + std::to_string(application)).c_str());
  connection_.run(("PRAGMA user_version = " + std::to_string(history_version)).c_str());
}

std::vector<HistoryEntry> HistoryStore::entries() {
  try {
    Transaction transaction(connection_, false);
    auto found = read();
    transaction.commit();
    return found;
  } catch (const sqlite::Fault& fault) {
    refuse(fault);
  }
}

std::vector<HistoryEntry> HistoryStore::read() {
  std::vector<HistoryEntry> entries;
  std::map<long long, std::size_t> places;
  Statement heads(connection_,
                  "SELECT entry.id, stand.name, date, kind, corrects FROM entry JOIN stand ON stand.id = entry.stand "
                  "ORDER BY entry.id");
  while (heads.step()) {
    HistoryEntry entry;
    entry.number = static_cast<int>(heads.count(0));
    entry.stand = heads.text(1);
    const auto day = day_of(heads.text(2));
    const auto kind = entry_kind(heads.text(3));
    if (!day || !kind) refuse("entry " + std::to_string(entry.number) + " has a date or a kind that is not known", "");
    entry.day = *day;
    entry.kind = *kind;
    entry.corrects = static_cast<int>(heads.count(4));
    places[heads.count(0)] = entries.size();
    entries.push_back(std::move(entry));
  }
  Statement values(connection_, "SELECT entry, key, number, text FROM value");
  while (values.step()) {
    const auto* field = history_field(values.text(1));
    const auto place = places.find(values.count(0));
    if (field == nullptr || place == places.end())
      refuse("entry " + std::to_string(values.count(0)) + " holds a value that is not known: " + values.text(1), "");
    const auto number = values.number(2);
    set_value(entries[place->second], *field, number ? HistoryValue(*number) : HistoryValue(values.text(3)));
  }
  link_corrections(entries);
  return entries;
}

Problems HistoryStore::add(HistoryEntry& entry,
                           const std::function<Problems(const std::vector<HistoryEntry>&)>& judge) {
  try {
    Transaction transaction(connection_, true);
    const State state = examine();  // another program may have been here meanwhile
    if (state == State::fresh || pragma("PRAGMA user_version") < history_version) bring_up_to_date(state);
    auto all = read();
    entry.number = all.empty() ? 1 : all.back().number + 1;
    all.push_back(entry);
    Problems found = judge(all);
    if (has_errors(found)) return found;
    write(entry);
    transaction.commit();
    return found;
  } catch (const sqlite::Fault& fault) {
    refuse(fault);
  }
}

void HistoryStore::write(const HistoryEntry& entry) {
  Statement(connection_, "INSERT OR IGNORE INTO stand (name) VALUES (?)").bind(1, entry.stand).finish();
  Statement head(
      connection_,
      "INSERT INTO entry (id, stand, date, kind, corrects) VALUES (?, (SELECT id FROM stand WHERE name = ?), "
      "?, ?, ?)");
  const std::string date = date_text(entry.day);
  const std::string kind(key_of(entry.kind));
  head.bind(1, static_cast<long long>(entry.number)).bind(2, entry.stand).bind(3, date).bind(4, kind);
  if (entry.corrects != 0)
    head.bind(5, static_cast<long long>(entry.corrects));
  else
    head.bind_nothing(5);
  head.finish();
  Statement value(connection_, "INSERT INTO value (entry, key, number, text) VALUES (?, ?, ?, ?)");
  for (const HistoryField& field : history_fields()) {
    const HistoryValue held = value_of(entry, field);
    if (std::holds_alternative<std::monostate>(held)) continue;
    value.bind(1, static_cast<long long>(entry.number)).bind(2, field.key);
    if (const auto* number = std::get_if<double>(&held)) {
      value.bind(3, *number).bind_nothing(4);
    } else {
      value.bind_nothing(3).bind(4, std::get<std::string>(held));
    }
    value.finish();
  }
}

}  // namespace holdback::cli
