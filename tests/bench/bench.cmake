# The benchmark: every *.cpp of this folder in one program.
find_package(benchmark REQUIRED)
file(GLOB bench_sources CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/*.cpp)
add_executable(bench ${bench_sources})
target_include_directories(bench PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_include_directories(bench SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
target_compile_definitions(bench PRIVATE BEDWRIGHT_SOURCE="${PROJECT_SOURCE_DIR}")
target_link_libraries(bench PRIVATE room_commands benchmark::benchmark)
