// A piece of work that runs ahead on another thread while its host does something else.
#pragma once

#include <functional>
#include <memory>

namespace holdback::numerics {

/// One piece of work at a time. Natively it runs on a thread of its own; in a build with HOLDBACK_SERIAL, for the
/// browser, and when not `threaded` it runs in wait(). The work must not touch what its host uses meanwhile.
class Ahead {
 public:
  explicit Ahead(bool threaded = true);
  /// Waits for work that still runs; what it throws is then lost.
  ~Ahead();
  Ahead(const Ahead&) = delete;
  Ahead& operator=(const Ahead&) = delete;

  /// Begins `work`. The work before must have been waited for.
  void start(std::function<void()> work);

  /// Returns when the work is done; an exception of the work is thrown on. Nothing happens when none was begun.
  void wait();

 private:
  struct Thread;
  [[maybe_unused]] bool threaded_;
  std::function<void()> work_{};
  std::unique_ptr<Thread> thread_;
};

}  // namespace holdback::numerics
