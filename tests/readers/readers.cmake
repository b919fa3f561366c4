# Cut and drill files read by other people's readers: ezdxf, GDAL and the npm
# package dxf-parser; kerf paths against GEOS's buffers. A reader that cannot be had skips its own test, and says why.
add_executable(write_samples ${CMAKE_CURRENT_LIST_DIR}/write_samples.cpp)
target_include_directories(write_samples PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(write_samples PRIVATE room_packet)
foreach(reader ezdxf gdal geos dxf_parser)
  add_test(NAME readers:${reader}
    COMMAND sh ${CMAKE_CURRENT_LIST_DIR}/read_samples.sh ${reader} $<TARGET_FILE:write_samples>
      ${CMAKE_CURRENT_BINARY_DIR}/readers-${reader})
  set_tests_properties(readers:${reader} PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 300)
endforeach()
