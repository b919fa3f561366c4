// Figures of the bed that the customer's assembly sheets may name.
#pragma once

#include <string>
#include <vector>

#include "draw/table2d.h"
#include "params/assembly_text.h"
#include "sheets/sheets.h"

namespace bedwright {

// Every name there is, in words with units as the order prints. Empty where this bed
// has no such thing.
TemplateFigures assembly_figures(const SheetInput& input);

// "4, 7 and 10"; nothing for none.
std::string listed_words(const std::vector<std::string>& words);

// What is measured at the end, with its limit and a place to write.
Table2d check_table(const SheetInput& input);

}  // namespace bedwright
