#include "holdback/numerics/ahead.hpp"

#include <utility>

#include "holdback/numerics/serial.hpp"

#ifndef HOLDBACK_SERIAL
#include <exception>
#include <thread>
#endif

namespace holdback::numerics {

#ifdef HOLDBACK_SERIAL

struct Ahead::Thread {};

Ahead::Ahead(bool) : threaded_(false) {}
Ahead::~Ahead() = default;

void Ahead::start(std::function<void()> work) { work_ = std::move(work); }

void Ahead::wait() {
  if (work_) std::exchange(work_, nullptr)();
}

#else

struct Ahead::Thread {
  std::thread thread{};
  std::exception_ptr failure{};
};

Ahead::Ahead(bool threaded) : threaded_(threaded), thread_(std::make_unique<Thread>()) {}

Ahead::~Ahead() {
  if (thread_->thread.joinable()) thread_->thread.join();
}

void Ahead::start(std::function<void()> work) {
  work_ = std::move(work);
  if (!threaded_) return;
  thread_->failure = nullptr;
  thread_->thread = std::thread([this] {
    try {
      std::exchange(work_, nullptr)();
    } catch (...) {
      thread_->failure = std::current_exception();
    }
  });
}

void Ahead::wait() {
  if (!threaded_) {
    if (work_) std::exchange(work_, nullptr)();
    return;
  }
  if (!thread_->thread.joinable()) return;
  thread_->thread.join();
  if (thread_->failure) std::rethrow_exception(std::exchange(thread_->failure, nullptr));
}

#endif

}  // namespace holdback::numerics
