// Pages as one PDF file: vectors, with text that can be searched and copied.
//
// The same pages give the same bytes with the same version of the drawing library
// and of the font: the date in the file is the one given, not the clock's.
// Letters are those of ISO 3098 (formats/font.h), embedded; a text that
// would run wider than list2d.h's text_width is set narrower, so that what the
// lists leave clear stays clear.
#pragma once

#include <string>
#include <vector>

#include "formats/page.h"

namespace bedwright {

struct PdfInfo {
  std::string title;
  std::string date;  // year-month-day
};

// One bookmark for each page, where its title is not empty. Throws std::runtime_error when
// the font cannot be read or the file cannot be made.
std::string pages_pdf(const std::vector<Page>& pages, const PdfInfo& info);

}  // namespace bedwright
