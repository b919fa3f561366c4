# The outside inspector: it links nothing of src, only the kernel's own libraries.
if(BEDWRIGHT_KERNEL)
  add_library(inspector STATIC inspector/bolts.cpp inspector/clashes.cpp inspector/cut_files.cpp
    inspector/drawing.cpp inspector/ground.cpp inspector/held.cpp inspector/model.cpp inspector/moving.cpp
    inspector/packet.cpp inspector/solid.cpp inspector/standing.cpp inspector/table.cpp inspector/welds.cpp)
  target_include_directories(inspector SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
  target_include_directories(inspector PUBLIC inspector)
  target_link_libraries(inspector PUBLIC fmt::fmt PRIVATE TKernel TKMath TKG2d TKG3d TKGeomBase TKBRep TKTopAlgo
                        TKMesh TKCDF TKLCAF TKXCAF TKXSBase TKSTEP TKXDESTEP)
  add_executable(inspect inspector/main.cpp)
  target_link_libraries(inspect PRIVATE inspector)
  # Its own tests: packets by the program, good and with faults put in.
  add_executable(test_inspector inspector/inspector_test.cpp inspector/damage.cpp)
  target_include_directories(test_inspector SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
  target_compile_definitions(test_inspector PRIVATE
    BEDWRIGHT_SOURCE="${PROJECT_SOURCE_DIR}" BEDWRIGHT_PROGRAM="${PROJECT_BINARY_DIR}/src/bedwright")
  target_link_libraries(test_inspector PRIVATE inspector GTest::gmock GTest::gtest_main TKernel TKMath TKBRep TKPrim
                        TKBO TKTopAlgo TKCDF TKLCAF TKXCAF TKXSBase TKSTEP TKXDESTEP)
  add_dependencies(test_inspector bedwright)
  gtest_discover_tests(test_inspector TEST_PREFIX inspector: DISCOVERY_TIMEOUT 120 PROPERTIES TIMEOUT 7200)
endif()
