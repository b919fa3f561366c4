# What a build for a browser has in place of the host's libraries.

# They are headers alone, the host's own. Their folders are linked into the build
# folder one by one: with all of /usr/include on the path the compiler would take the
# host's C library for its own.
set(browser_headers ${CMAKE_BINARY_DIR}/host_headers)
file(MAKE_DIRECTORY ${browser_headers})

function(header_library target folder header)
  find_path(${folder}_HOME ${header} PATHS /usr/include /usr/include/eigen3 /usr/local/include
            NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
  file(CREATE_LINK ${${folder}_HOME}/${folder} ${browser_headers}/${folder} SYMBOLIC)
  add_library(${target} INTERFACE IMPORTED GLOBAL)
  target_include_directories(${target} SYSTEM INTERFACE ${browser_headers})
endfunction()

header_library(fmt::fmt fmt fmt/format.h)
target_compile_definitions(fmt::fmt INTERFACE FMT_HEADER_ONLY)
header_library(FastFloat::fast_float fast_float fast_float/fast_float.h)
header_library(nlohmann_json::nlohmann_json nlohmann nlohmann/json.hpp)
header_library(Eigen3::Eigen Eigen Eigen/Core)

# What is thrown must be caught: a faulty section is a message, not the end of the page.
if(EMSCRIPTEN)
  add_compile_options(-fwasm-exceptions)
  add_link_options(-fwasm-exceptions)
endif()
