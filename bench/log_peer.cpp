// For log_peer.py, and to make long logs: `make ROWS FILE` writes an invented log, `read FILE THREADS` reads one and
// prints seconds, rows, bytes and a sum over some tensions as JSON.
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>

#include "holdback/files/read_log.hpp"
#include "log_text.hpp"

namespace {

int make(const char* rows, const char* name) {
  std::FILE* file = std::fopen(name, "wb");
  if (file == nullptr) return 1;
  std::string piece;
  const auto flush = [&] {
    const bool whole = std::fwrite(piece.data(), 1, piece.size(), file) == piece.size();
    piece.clear();
    if (!whole) std::exit(1);
  };
  log_bench::write(std::strtoull(rows, nullptr, 10), [&](const char* text, std::size_t size) {
    piece.append(text, size);
    if (piece.size() > (1U << 20U)) flush();
  });
  flush();
  return std::fclose(file);
}

int read(const char* name, const char* threads) {
  std::FILE* file = std::fopen(name, "rb");
  if (file == nullptr) return 1;
  const auto begin = std::chrono::steady_clock::now();
  holdback::files::LogReader reader(name, [file](char* to, std::size_t most) { return std::fread(to, 1, most, file); },
                                    {{}, {}, {}, {}, {}, std::strtoull(threads, nullptr, 10)});
  double rows = 0;
  double spots = 0;  // every thousandth tension of a block, to be compared
  for (holdback::LogBlock block; reader.next(block);) {
    rows += static_cast<double>(block.rows);
    for (std::size_t i = 0; i < block.rows; i += 1000) spots += block.of(holdback::LogChannel::tension)[i];
  }
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - begin;
  std::fclose(file);
  std::printf("{\"seconds\":%.6f,\"rows\":%.0f,\"bytes\":%.0f,\"spots\":%.17g}\n", spent.count(), rows,
              reader.reading().bytes, spots);
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  if (count == 4 && std::strcmp(arguments[1], "make") == 0) return make(arguments[2], arguments[3]);
  if (count == 4 && std::strcmp(arguments[1], "read") == 0) return read(arguments[2], arguments[3]);
  std::fprintf(stderr, "usage: holdback_log_peer make ROWS FILE | read FILE THREADS\n");
  return 2;
}
