// Findings as a person reads them in a terminal or in report.txt.
#pragma once

#include <string>
#include <vector>

#include "rules/finding.h"
#include "units/figures.h"

namespace bedwright {

struct TableStyle {
  Figures figures;
  int width = 100;      // columns of the terminal; at least 60 are used
  bool colour = false;  // ANSI
};

// One block for each finding: severity, code, name, place, measured, limit and margin in
// columns, then message, remedy and changes wrapped beneath. Ends with the count
// of each severity.
std::string findings_table(const std::vector<Finding>& findings, const TableStyle& style);

// "2 stops, 1 warning, no notes".
std::string counts_text(const std::vector<Finding>& findings);

const char* severity_word(Severity severity);

// Words broken into lines of at most `width` characters, each after `indent`
// spaces; a word longer than a line stands alone.
std::string wrapped(const std::string& text, int indent, int width);

}  // namespace bedwright
