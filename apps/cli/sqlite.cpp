#include "sqlite.hpp"

namespace holdback::cli::sqlite {

Connection::Connection(const std::string& path, bool create) {
  const int flags = SQLITE_OPEN_READWRITE | (create ? SQLITE_OPEN_CREATE : 0);
  const int code = sqlite3_open_v2(path.c_str(), &handle_, flags, nullptr);
  if (code != SQLITE_OK) {
    const Fault fault(code, handle_ != nullptr ? sqlite3_errmsg(handle_) : "out of memory");
    sqlite3_close(handle_);
    throw fault;
  }
  sqlite3_busy_timeout(handle_, patience);
  sqlite3_extended_result_codes(handle_, 1);
}

Connection::~Connection() { sqlite3_close(handle_); }

void Connection::run(const char* statements) {
  const int code = sqlite3_exec(handle_, statements, nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) throw Fault(code, sqlite3_errmsg(handle_));
}

Statement::Statement(const Connection& connection, const char* text) : connection_(connection) {
  check(sqlite3_prepare_v2(connection.handle(), text, -1, &statement_, nullptr));
}

Statement::~Statement() { sqlite3_finalize(statement_); }

void Statement::check(int code) const {
  if (code != SQLITE_OK && code != SQLITE_ROW && code != SQLITE_DONE)
    throw Fault(code, sqlite3_errmsg(connection_.handle()));
}

Statement& Statement::bind(int place, const std::string& text) {
  check(sqlite3_bind_text64(statement_, place, text.data(), text.size(), nullptr, SQLITE_UTF8));
  return *this;
}

Statement& Statement::bind(int place, double number) {
  check(sqlite3_bind_double(statement_, place, number));
  return *this;
}

Statement& Statement::bind(int place, long long count) {
  check(sqlite3_bind_int64(statement_, place, count));
  return *this;
}

Statement& Statement::bind_nothing(int place) {
  check(sqlite3_bind_null(statement_, place));
  return *this;
}

bool Statement::step() {
  const int code = sqlite3_step(statement_);
  check(code);
  return code == SQLITE_ROW;
}

void Statement::finish() {
  while (step()) continue;
  check(sqlite3_reset(statement_));
}

long long Statement::count(int column) const { return sqlite3_column_int64(statement_, column); }

std::string Statement::text(int column) const {
  const void* bytes = sqlite3_column_blob(statement_, column);
  const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
  return bytes == nullptr ? std::string() : std::string(static_cast<const char*>(bytes), size);
}

std::optional<double> Statement::number(int column) const {
  if (is_null(column)) return std::nullopt;
  return sqlite3_column_double(statement_, column);
}

bool Statement::is_null(int column) const { return sqlite3_column_type(statement_, column) == SQLITE_NULL; }

Transaction::Transaction(Connection& connection, bool writing) : connection_(connection) {
  connection_.run(writing ? "BEGIN IMMEDIATE" : "BEGIN");
}

Transaction::~Transaction() {
  if (open_) sqlite3_exec(connection_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Transaction::commit() {
  connection_.run("COMMIT");
  open_ = false;
}

}  // namespace holdback::cli::sqlite
