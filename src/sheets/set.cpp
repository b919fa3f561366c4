// The drawing set: every sheet in its order.
#include <cctype>
#include <iterator>

#include "sheets/sheets.h"

namespace bedwright {

std::string file_word(const std::string& name) {
  std::string word;
  for (const char c : name) word += std::isalnum(static_cast<unsigned char>(c)) || c == '-' ? c : '_';
  return word;
}

std::vector<Sheet> sheet_contents(const SheetInput& input) {
  std::vector<Sheet> all;
  for (const auto make :
       {arrangement_sheets, frame_sheets, frame_change_sheets, tab_layout_sheets, drill_sheets, plate_sheets,
        contact_sheets, shop_aid_sheets, tongue_tag_sheets, bolting_sheets, list_sheets, assembly_sheets})
    for (Sheet& sheet : make(input)) all.push_back(std::move(sheet));
  return all;
}

SheetSet issued_sheets(const SheetInput& input) {
  SheetSet set;
  set.sheets = sheet_contents(input);
  if (input.before) set.fates = mark_changes(set.sheets, *input.before, input.job.order.order.revision);
  std::vector<Sheet> index = index_sheets(input, set.sheets, set.fates);
  set.sheets.insert(set.sheets.begin(), std::make_move_iterator(index.begin()),
                    std::make_move_iterator(index.end()));
  const Paper paper = paper_of(input.job.order.order);
  for (std::size_t i = 0; i < set.sheets.size(); ++i)
    add_surround(set.sheets[i], input.job, paper, input.issue(), i + 1, set.sheets.size());
  return set;
}

std::vector<Sheet> sheet_set(const SheetInput& input) { return issued_sheets(input).sheets; }

}  // namespace bedwright
