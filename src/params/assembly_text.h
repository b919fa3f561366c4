// The words of the customer's assembly sheets: plain text files the shop may change,
// with figures of the bed filled in where a name stands in braces.
//
// letterhead.txt: every line is printed at the head of the first sheet.
// steps.txt: a line's first character says what it is
//     =  heading     -  numbered step     *  item of a list     !  caution
//     @  picture or table of that name    #  note to the shop, not printed
//     two blanks: goes on with the line before
// {name} is a figure, {{ and }} are braces. A line (with what goes on with it) that
// has a figure this bed has not is left out.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "yaml/mark.h"
#include "yaml/problem.h"

namespace bedwright {

struct AssemblyLine {
  char kind = '-';
  std::string text;
  friend bool operator==(const AssemblyLine&, const AssemblyLine&) = default;
};

struct AssemblyText {
  std::vector<std::string> letterhead;
  std::vector<AssemblyLine> lines;
};

// A file as read; it goes into the digest of the inputs.
struct TemplateFile {
  std::string path, content;
};
struct AssemblyFiles {
  TemplateFile letterhead, steps;
};

// Names and what is printed for them; empty: this bed has none.
using TemplateFigures = std::vector<std::pair<std::string, std::string>>;

// Reads both files from the shop's folder, where the order names one, and what that
// folder lacks from `shipped`. A folder that has neither is a problem at its name.
AssemblyFiles read_assembly_files(const std::string& shipped, const std::string& order_path, const Name& own,
                                  std::vector<Problem>& problems);

// Fills every line. A problem for each unknown name, broken brace, unknown picture and
// line of no kind, with its file, line and column.
AssemblyText fill_assembly(const AssemblyFiles& files, const TemplateFigures& figures,
                           const std::vector<std::string>& pictures, std::vector<Problem>& problems);

}  // namespace bedwright
