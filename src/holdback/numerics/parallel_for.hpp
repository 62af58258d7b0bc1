// One loop on all processors. Each index writes its own slot, so the answer is the same on one thread or many.
#pragma once

#include <cstddef>
#include <functional>

namespace holdback::numerics {

/// How many threads parallel_for() uses when not told: the machine's, at least 1; 1 in a build with HOLDBACK_SERIAL or
/// for the browser.
std::size_t hardware_threads();

/// Calls body(i) once for every i in 0 … count − 1, on `threads` threads (0 means hardware_threads()).
/// Rules for the body: it writes only what belongs to its index and reads only what no other index writes.
/// When bodies throw, the exception of the lowest index is thrown on; higher indices may then not have run.
void parallel_for(std::size_t count, std::size_t threads, const std::function<void(std::size_t)>& body);
void parallel_for(std::size_t count, const std::function<void(std::size_t)>& body);

}  // namespace holdback::numerics
