option(HOLDBACK_TESTS "Build the tests and benchmarks; without them no test library is needed" ON)
option(HOLDBACK_SANITIZE "Build with the address and undefined-behaviour sanitizers" OFF)
option(HOLDBACK_COVERAGE "Build with coverage counters (gcov)" OFF)
option(HOLDBACK_FUZZ "Build the libFuzzer targets (clang only)" OFF)
option(HOLDBACK_WASM_LEGACY_EXCEPTIONS "Use JavaScript exceptions instead of wasm exceptions (emcc only)" OFF)

# One interface target carries what every target of ours compiles with.
add_library(holdback_flags INTERFACE)
target_compile_options(holdback_flags INTERFACE
  -Wall -Wextra -Wpedantic -Werror -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor -Wold-style-cast
  # No host path may end up in a binary (assert and exception texts), so that two folders build the same file.
  # g++ takes the last match, so the build folder, which lies inside the source folder, stands last.
  -ffile-prefix-map=${CMAKE_SOURCE_DIR}/= -ffile-prefix-map=${CMAKE_BINARY_DIR}/=
  # One rounding on every host: a*b+c is never fused behind our back.
  -ffp-contract=off
  # Nobody reads errno or the floating-point flags, and minding them keeps loops out of wide registers.
  -fno-math-errno -fno-trapping-math)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # g++ 12 sees uninitialised values in std::optional and std::variant, and overlapping copies in "text" + string, where
  # there are none. clang++ and the sanitizers see what is really there.
  target_compile_options(holdback_flags INTERFACE -Wno-maybe-uninitialized -Wno-restrict)
endif()

if(HOLDBACK_SANITIZE OR HOLDBACK_FUZZ)
  set(holdback_sanitize -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_compile_options(holdback_flags INTERFACE ${holdback_sanitize})
  target_link_options(holdback_flags INTERFACE ${holdback_sanitize})
endif()
if(HOLDBACK_FUZZ)
  target_compile_options(holdback_flags INTERFACE -fsanitize=fuzzer-no-link)
endif()
if(HOLDBACK_COVERAGE)
  target_compile_options(holdback_flags INTERFACE --coverage)
  target_link_options(holdback_flags INTERFACE --coverage)
endif()
if(EMSCRIPTEN)
  if(HOLDBACK_WASM_LEGACY_EXCEPTIONS)
    set(holdback_exceptions -fexceptions)
  else()
    set(holdback_exceptions -fwasm-exceptions)
  endif()
  target_compile_options(holdback_flags INTERFACE ${holdback_exceptions})
  target_link_options(holdback_flags INTERFACE ${holdback_exceptions})
endif()

find_program(HOLDBACK_CCACHE ccache)
if(HOLDBACK_CCACHE)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${HOLDBACK_CCACHE})
endif()
