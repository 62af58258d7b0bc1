// SQLite as far as it is needed here: a connection, prepared statements, a transaction that is undone unless committed.
#pragma once

#include <sqlite3.h>

#include <optional>
#include <stdexcept>
#include <string>

namespace holdback::cli::sqlite {

/// What SQLite refused, with its code.
class Fault : public std::runtime_error {
 public:
  Fault(int code, const std::string& what) : std::runtime_error(what), code_(code) {}
  int code() const { return code_; }

 private:
  int code_;
};

/// An open file. Waits for other writers, up to `patience`.
class Connection {
 public:
  /// With `create` a file that is not there is made.
  Connection(const std::string& path, bool create);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  /// Runs statements of our own, without values in them.
  void run(const char* statements);
  sqlite3* handle() const { return handle_; }

 private:
  static constexpr int patience = 20'000;  // [ms]
  sqlite3* handle_{};
};

/// A prepared statement. Values are bound by their place, counted from one.
class Statement {
 public:
  Statement(const Connection& connection, const char* text);
  ~Statement();
  Statement(const Statement&) = delete;
  Statement& operator=(const Statement&) = delete;

  Statement& bind(int place, const std::string& text);
  Statement& bind(int place, double number);
  Statement& bind(int place, long long count);
  Statement& bind_nothing(int place);

  /// The next row; false at the end.
  bool step();
  /// Runs to the end, and is ready for other values.
  void finish();

  long long count(int column) const;
  std::string text(int column) const;
  std::optional<double> number(int column) const;
  bool is_null(int column) const;

 private:
  void check(int code) const;
  const Connection& connection_;
  sqlite3_stmt* statement_{};
};

/// All or nothing. Taken at once for writing, so that what is read in it holds until it is committed.
class Transaction {
 public:
  Transaction(Connection& connection, bool writing);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Connection& connection_;
  bool open_{true};
};

}  // namespace holdback::cli::sqlite
