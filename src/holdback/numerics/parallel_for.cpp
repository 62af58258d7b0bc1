#include "holdback/numerics/parallel_for.hpp"

#include <algorithm>

#include "holdback/numerics/serial.hpp"

#ifndef HOLDBACK_SERIAL
#include <atomic>
#include <exception>
#include <limits>
#include <mutex>
#include <thread>
#include <vector>
#endif

namespace holdback::numerics {

#ifdef HOLDBACK_SERIAL

std::size_t hardware_threads() { return 1; }

void parallel_for(std::size_t count, std::size_t, const std::function<void(std::size_t)>& body) {
  for (std::size_t i = 0; i < count; ++i) body(i);
}

#else

namespace {

/// The work that all threads share: chunks are handed out in rising order.
class Work {
 public:
  Work(std::size_t count, std::size_t chunk, const std::function<void(std::size_t)>& body)
      : count_(count), chunk_(chunk), body_(body) {}

  void run() {
    while (!failed_) {
      const std::size_t begin = next_.fetch_add(chunk_);
      if (begin >= count_) return;
      run_chunk(begin, std::min(count_, begin + chunk_));
    }
  }

  void rethrow() const {
    if (failure_) std::rethrow_exception(failure_);
  }

 private:
  void run_chunk(std::size_t begin, std::size_t end) {
    std::size_t i = begin;
    try {
      for (; i < end; ++i) body_(i);
    } catch (...) {
      const std::lock_guard lock(mutex_);
      failed_ = true;
      // Chunks below this one were handed out earlier and run to their end: the lowest failure is always seen.
      if (i >= failed_index_) return;
      failed_index_ = i;
      failure_ = std::current_exception();
    }
  }

  std::size_t count_;
  std::size_t chunk_;
  const std::function<void(std::size_t)>& body_;
  std::atomic<std::size_t> next_{0};
  std::atomic<bool> failed_{false};
  std::mutex mutex_;
  std::size_t failed_index_{std::numeric_limits<std::size_t>::max()};
  std::exception_ptr failure_{};
};

}  // namespace

std::size_t hardware_threads() { return std::max<std::size_t>(1, std::thread::hardware_concurrency()); }

void parallel_for(std::size_t count, std::size_t threads, const std::function<void(std::size_t)>& body) {
  if (threads == 0) threads = hardware_threads();
  threads = std::min(threads, count);
  if (threads <= 1) {
    for (std::size_t i = 0; i < count; ++i) body(i);
    return;
  }
  Work work(count, std::max<std::size_t>(1, count / (8 * threads)), body);
  std::vector<std::thread> helpers;
  for (std::size_t t = 1; t < threads; ++t) helpers.emplace_back([&work] { work.run(); });
  work.run();
  for (std::thread& helper : helpers) helper.join();
  work.rethrow();
}

#endif

void parallel_for(std::size_t count, const std::function<void(std::size_t)>& body) { parallel_for(count, 0, body); }

}  // namespace holdback::numerics
