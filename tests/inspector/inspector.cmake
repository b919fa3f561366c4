# The outside inspector: it links nothing of src, only the kernel's own libraries.
if(BEDWRIGHT_KERNEL)
  add_library(inspector STATIC
    inspector/bolts.cpp inspector/clashes.cpp inspector/cut_files.cpp inspector/drawing.cpp
    inspector/ground.cpp inspector/held.cpp inspector/model.cpp inspector/moving.cpp inspector/packet.cpp
    inspector/solid.cpp inspector/standing.cpp inspector/table.cpp inspector/welds.cpp)
  target_include_directories(inspector SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
  target_include_directories(inspector PUBLIC inspector)
  target_link_libraries(inspector PUBLIC fmt::fmt PRIVATE TKernel TKMath TKG2d TKG3d TKGeomBase TKBRep
                        TKTopAlgo TKMesh TKCDF TKLCAF TKXCAF TKXSBase TKSTEP TKXDESTEP)
  add_executable(inspect inspector/main.cpp)
  target_link_libraries(inspect PRIVATE inspector)
endif()
