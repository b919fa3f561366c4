# Programs that need the kernel, and the benchmark.
if(BEDWRIGHT_TESTS AND BEDWRIGHT_KERNEL)
  find_package(rapidcheck QUIET)
  test_folder(solids KERNEL USES room_kernel rapidcheck)
  test_folder(step KERNEL USES room_kernel nlohmann_json::nlohmann_json)
  if(TARGET test_solids)
    target_include_directories(test_solids SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
  endif()
  if(TARGET test_step)
    # Reads the files back in a process of its own, by the kernel's document
    # framework, which the program itself does without.
    add_executable(step_read step/step_read.cpp)
    target_include_directories(step_read SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
    target_link_libraries(step_read PRIVATE nlohmann_json::nlohmann_json TKernel TKMath TKG3d TKBRep TKTopAlgo
                          TKCDF TKLCAF TKXCAF TKXSBase TKSTEP TKXDESTEP)
    # Writes the sample bed, so that two processes can be compared.
    add_executable(step_write step/step_write.cpp)
    target_include_directories(step_write PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
    target_link_libraries(step_write PRIVATE room_kernel)
    add_dependencies(test_step step_read step_write)
    target_compile_definitions(test_step PRIVATE STEP_READ="$<TARGET_FILE:step_read>"
                               STEP_WRITE="$<TARGET_FILE:step_write>")
  endif()
endif()

if(BEDWRIGHT_BENCH AND BEDWRIGHT_KERNEL)
  find_package(benchmark REQUIRED)
  file(GLOB bench_sources CONFIGURE_DEPENDS bench/*.cpp)
  add_executable(bench ${bench_sources})
  target_include_directories(bench PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  target_include_directories(bench SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
  target_link_libraries(bench PRIVATE room_kernel room_layout benchmark::benchmark)
endif()
