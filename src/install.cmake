# What `cmake --install` puts where, and the Debian package of the same:
#   cmake --build --preset deb        build/main/bedwright_VERSION_ARCHITECTURE.deb

set(man_page ${CMAKE_CURRENT_BINARY_DIR}/bedwright.1)
add_custom_command(OUTPUT ${man_page} DEPENDS bedwright man.cmake
  COMMAND ${CMAKE_COMMAND} -D PROGRAM=$<TARGET_FILE:bedwright> -D PAGE=${man_page}
    -P ${CMAKE_CURRENT_SOURCE_DIR}/man.cmake VERBATIM)
add_custom_target(to_install ALL DEPENDS bedwright ${man_page})

# The program looks for ../share/bedwright from its own folder (commands/home.h).
install(TARGETS bedwright RUNTIME DESTINATION bin)
install(DIRECTORY ${PROJECT_SOURCE_DIR}/params ${PROJECT_SOURCE_DIR}/templates DESTINATION share/bedwright)
install(FILES ${man_page} DESTINATION share/man/man1)
install(FILES ${PROJECT_SOURCE_DIR}/README.md DESTINATION share/doc/bedwright)
install(FILES ${PROJECT_SOURCE_DIR}/LICENSE DESTINATION share/doc/bedwright RENAME copyright)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "The Bedwright authors <bedwright@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "lays out, checks and releases trailer beds for a saw mill's track")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_DEPENDS fonts-osifont)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
include(CPack)
add_custom_target(deb DEPENDS to_install COMMAND ${CMAKE_CPACK_COMMAND} -G DEB
  WORKING_DIRECTORY ${PROJECT_BINARY_DIR} VERBATIM)
