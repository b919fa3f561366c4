# Writes the header that says which build this is; touches it only when that changes, so
# that nothing is compiled again for nothing. Run at every build: a name worked out when
# the folder was configured would be that of an older commit soon.
#   cmake -D SOURCE=... -D VERSION=... -D HEADER=... -P build_name.cmake
cmake_minimum_required(VERSION 3.25)

set(name ${VERSION})
# A tree unpacked inside somebody else's history has none of its own.
find_program(GIT git)
if(GIT AND EXISTS ${SOURCE}/.git)
  # Without tags and of a fixed length: the same commit has the same name in any clone.
  execute_process(COMMAND ${GIT} -C ${SOURCE} describe --always --dirty --exclude=* --abbrev=12
                  OUTPUT_VARIABLE described ERROR_VARIABLE why RESULT_VARIABLE failed
                  OUTPUT_STRIP_TRAILING_WHITESPACE ERROR_STRIP_TRAILING_WHITESPACE)
  if(failed)
    message("git does not say which commit this is, so the build is named by its version: ${why}")
  else()
    set(name ${described})
  endif()
endif()
file(CONFIGURE OUTPUT ${HEADER} CONTENT "#define BEDWRIGHT_VERSION \"@VERSION@\"\n#define BEDWRIGHT_BUILD \"@name@\"\n" @ONLY)
