# Makes the man page from what the program says of itself, so that the two cannot differ.
#   cmake -D PROGRAM=... -D PAGE=... -P man.cmake
cmake_minimum_required(VERSION 3.25)

function(help_of result)
  execute_process(COMMAND ${PROGRAM} ${ARGN} --help OUTPUT_VARIABLE text COMMAND_ERROR_IS_FATAL ANY)
  set(${result} "${text}" PARENT_SCOPE)
endfunction()

# As it stands, line by line: to roff a backslash, a dash and a dot or an apostrophe at
# the start of a line mean something else.
function(verbatim result text)
  string(REPLACE "\\" "\\e" text "${text}")
  string(REPLACE "-" "\\-" text "${text}")
  string(REGEX REPLACE "\n([.'])" "\n\\\\&\\1" text "\n${text}")
  string(STRIP "${text}" text)
  set(${result} ".nf\n${text}\n.fi\n" PARENT_SCOPE)
endfunction()

execute_process(COMMAND ${PROGRAM} --version OUTPUT_VARIABLE version COMMAND_ERROR_IS_FATAL ANY)
string(REGEX REPLACE "^bedwright ([0-9.]+).*" "\\1" version "${version}")
help_of(help)
if(NOT help MATCHES "^Bedwright: ([^\n]*)\\.\n")
  message(FATAL_ERROR "the help does not begin with a sentence that says what the program is")
endif()
verbatim(body "${help}")
set(page ".TH BEDWRIGHT 1 \"\" \"bedwright ${version}\" \"User Commands\"\n.SH NAME\nbedwright \\- ${CMAKE_MATCH_1}\n")
string(APPEND page ".SH DESCRIPTION\n${body}")

# Its commands: the indented names behind "Subcommands:".
string(REGEX MATCH "Subcommands:\n(  [^\n]*\n)+" list "${help}")
string(REGEX MATCHALL "\n  [a-z]+" commands "${list}")
if(NOT commands)
  message(FATAL_ERROR "the help names no commands")
endif()
foreach(command ${commands})
  string(STRIP "${command}" command)
  help_of(help ${command})
  verbatim(body "${help}")
  string(TOUPPER "bedwright ${command}" heading)
  string(APPEND page ".SH ${heading}\n${body}")
endforeach()
string(APPEND page ".SH ENVIRONMENT\n.TP\nBEDWRIGHT_HOME\nThe folder with params/ and templates/, where it is not the one installed with the program.\n")
file(WRITE ${PAGE} "${page}")
