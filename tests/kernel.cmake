# The test programs that need the kernel.
if(BEDWRIGHT_KERNEL)
  test_folder(kernel KERNEL USES room_kernel room_sheets)
  target_include_directories(test_kernel SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})

  # Reads the files back in a process of its own, by the kernel's document
  # framework, which the program itself does without.
  add_executable(step_read step/step_read.cpp)
  target_include_directories(step_read SYSTEM PRIVATE ${OpenCASCADE_INCLUDE_DIR})
  target_link_libraries(step_read PRIVATE nlohmann_json::nlohmann_json TKernel TKMath TKG3d TKBRep TKTopAlgo
                        TKCDF TKLCAF TKXCAF TKXSBase TKSTEP TKXDESTEP)
  # Writes the sample bed, so that two processes can be compared.
  add_executable(step_write step/step_write.cpp)
  target_include_directories(step_write PRIVATE ${CMAKE_CURRENT_SOURCE_DIR})
  target_link_libraries(step_write PRIVATE room_kernel room_layout)
  test_folder(step KERNEL USES room_kernel room_layout nlohmann_json::nlohmann_json)
  add_dependencies(test_step step_read step_write)
  target_compile_definitions(test_step PRIVATE STEP_READ="$<TARGET_FILE:step_read>"
                             STEP_WRITE="$<TARGET_FILE:step_write>")

  # The general arrangement with the kernel's views.
  test_folder(arrangement KERNEL USES room_commands)
  # Random orders against every pair, measured by the kernel.
  test_folder(brute KERNEL USES room_commands)
  # A map in three parts on a one-node Slurm, where one can start.
  add_test(NAME offer:slurm COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/offer/slurm.sh $<TARGET_FILE:bedwright> ${PROJECT_SOURCE_DIR}/params/orders/sizes.yaml)
  set_tests_properties(offer:slurm PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 300)

  # Across the whole program.
  test_folder(planted KERNEL USES room_commands)
  test_folder(program KERNEL USES room_commands)
  add_dependencies(test_program to_install step_read)
  target_compile_definitions(test_program PRIVATE STEP_READ="$<TARGET_FILE:step_read>")
  add_test(NAME program:package COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/program/package.sh ${PROJECT_BINARY_DIR} ${PROJECT_SOURCE_DIR})
  add_test(NAME program:launcher COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/program/launcher.sh ${PROJECT_SOURCE_DIR})
  set_tests_properties(program:package program:launcher PROPERTIES TIMEOUT 300)
  # The frame as thin plates in CalculiX, from the orders' files.
  add_test(NAME loads:shells COMMAND /usr/bin/python3 -B ${CMAKE_CURRENT_SOURCE_DIR}/loads/shells.py $<TARGET_FILE:bedwright>
    ${PROJECT_SOURCE_DIR}/params ${CMAKE_CURRENT_BINARY_DIR}/shells)
  set_tests_properties(loads:shells PROPERTIES TIMEOUT 600 SKIP_RETURN_CODE 77)
  # Small samples of long runs: see the head of each script.
  set(records ${CMAKE_CURRENT_SOURCE_DIR}/records)
  set(records_folder ${CMAKE_CURRENT_BINARY_DIR}/records)
  add_test(NAME records:failing_calls COMMAND /usr/bin/python3 -B ${records}/failing_calls.py $<TARGET_FILE:bedwright>
    ${records_folder}/failing_calls --draws letter --every 1000 --least 3)
  add_test(NAME records:kills COMMAND /usr/bin/python3 -B ${records}/kills.py $<TARGET_FILE:bedwright> ${records_folder}/kills 16)
  add_test(NAME records:pairs COMMAND /usr/bin/python3 -B ${records}/pairs.py $<TARGET_FILE:bedwright> ${records_folder}/pairs 5)
  add_test(NAME records:ten_years COMMAND /usr/bin/python3 -B ${records}/ten_years.py $<TARGET_FILE:bedwright> ${records_folder}/ten_years 4)
  set_tests_properties(records:failing_calls records:kills records:pairs records:ten_years PROPERTIES TIMEOUT 600
    SKIP_RETURN_CODE 77)
  # Of the orders with cut files; a lot frame has them only for what is added to it.
  foreach(order base one_extension metric lot_frame_90)
    add_test(NAME program:cut_against_step_${order}
      COMMAND /usr/bin/python3 ${CMAKE_CURRENT_SOURCE_DIR}/program/cut_against_step.py $<TARGET_FILE:bedwright>
        $<TARGET_FILE:step_read> ${CMAKE_CURRENT_BINARY_DIR}/cut-against-step/${order}
        ${PROJECT_SOURCE_DIR}/params/orders/${order}.yaml)
    # One npm folder serves all four, so they take turns.
    set_tests_properties(program:cut_against_step_${order} PROPERTIES TIMEOUT 300 RESOURCE_LOCK dxf_parser)
  endforeach()
endif()
