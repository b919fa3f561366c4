# What node makes of orders, held to what this build makes of them: the jobs, and the findings.
add_executable(browser_hold browser/hold.cpp)
target_include_directories(browser_hold PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(browser_hold PRIVATE room_params)
add_test(NAME browser:same_as_host COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/browser/same_as_host.sh
         $<TARGET_FILE:browser_hold> ${CMAKE_BINARY_DIR}/browser)
add_executable(browser_findings browser/findings.cpp)
target_include_directories(browser_findings PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
target_link_libraries(browser_findings PRIVATE room_examine)
add_test(NAME browser:same_findings COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/browser/same_findings.sh
         $<TARGET_FILE:browser_findings> ${CMAKE_BINARY_DIR}/browser)
# Both build in one folder, so they take turns.
set_tests_properties(browser:same_as_host browser:same_findings PROPERTIES
                     SKIP_RETURN_CODE 77 TIMEOUT 900 RESOURCE_LOCK browser_build)
