# holdback_layer(physics SEES model numerics)
# One folder of src/holdback is one static library. It links only the folders named after SEES; tests/house/includes.py
# reads the same lines and fails on an #include that follows no arrow.
#
# A layer that only words and sets what others reckoned is no faster for -O3, but builds longer and grows; in the
# browser, where each byte is loaded and compiled before the first answer, those that read and pass on are built for
# size as well. Sources named after FAST are left out of that.
set(holdback_wording draw report papers)
set(holdback_passing_on files api units)
function(holdback_layer name)
  cmake_parse_arguments(arg "" "" "SEES;FAST" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_SOURCE_DIR}/*.cpp)
  if(sources)
    add_library(holdback_${name} STATIC ${sources})
    target_link_libraries(holdback_${name} PRIVATE holdback_flags)
    if(EMSCRIPTEN AND name IN_LIST holdback_wording OR EMSCRIPTEN AND name IN_LIST holdback_passing_on)
      target_compile_options(holdback_${name} PRIVATE $<$<CONFIG:Release>:-Os>)
      set_source_files_properties(${arg_FAST} PROPERTIES COMPILE_OPTIONS $<$<CONFIG:Release>:-O3>)
    elseif(name IN_LIST holdback_wording)
      target_compile_options(holdback_${name} PRIVATE $<$<CONFIG:Release>:-O1>)
    endif()
    set(scope PUBLIC)
  else()  # headers only
    add_library(holdback_${name} INTERFACE)
    set(scope INTERFACE)
  endif()
  target_include_directories(holdback_${name} ${scope} ${CMAKE_SOURCE_DIR}/src)
  target_link_libraries(holdback_${name} ${scope} holdback_sysinc)
  foreach(seen ${arg_SEES})
    target_link_libraries(holdback_${name} ${scope} holdback_${seen})
  endforeach()
endfunction()
