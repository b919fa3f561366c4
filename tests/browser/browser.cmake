# What node makes of orders, held to what this build makes of them.
add_executable(browser_hold browser/hold.cpp)
target_include_directories(browser_hold PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(browser_hold PRIVATE room_params)
add_test(NAME browser:same_as_host COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/browser/same_as_host.sh
         $<TARGET_FILE:browser_hold> ${CMAKE_BINARY_DIR}/browser)
set_tests_properties(browser:same_as_host PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 900)
