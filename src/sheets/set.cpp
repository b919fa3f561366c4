// The drawing set: every sheet in its order.
#include <cctype>

#include "sheets/sheets.h"

namespace bedwright {

std::string file_word(const std::string& name) {
  std::string word;
  for (const char c : name) word += std::isalnum(static_cast<unsigned char>(c)) || c == '-' ? c : '_';
  return word;
}

std::vector<Sheet> sheet_set(const SheetInput& input) {
  std::vector<Sheet> all;
  for (const auto make : {arrangement_sheets, frame_sheets, tab_layout_sheets, drill_sheets, plate_sheets,
                          contact_sheets, shop_aid_sheets, bolting_sheets, list_sheets, assembly_sheets})
    for (Sheet& sheet : make(input)) all.push_back(std::move(sheet));
  const Paper paper = paper_of(input.job.order.order);
  for (std::size_t i = 0; i < all.size(); ++i)
    add_surround(all[i], input.job, paper, input.draft, i + 1, all.size());
  return all;
}

}  // namespace bedwright
