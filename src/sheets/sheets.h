// The drawing set: one function for each kind of sheet, each from the examined bed
// alone, and the whole set in order.
#pragma once

#include <vector>

#include "examine/examine.h"
#include "params/assembly_text.h"
#include "sheets/arrangement/arrangement.h"
#include "sheets/changed.h"
#include "sheets/sheet.h"

namespace bedwright {

// A list of the packet, to be printed as a table.
struct PrintedList {
  std::string caption, csv;
  std::vector<std::string> left_out;  // columns by their heads
};

struct SheetInput {
  const Examined& examined;
  bool draft = false;
  std::vector<PrintedList> lists = {};
  const BedViews* views = nullptr;        // without views there is no general arrangement
  AssemblyText assembly = {};             // words for the customer; without any, no assembly sheets
  std::string digest = {};                // of what the sheets are made from (sheets/issue.h)
  const Before* before = nullptr;         // the release that this one revises, if any
  std::vector<FateOfSheet> further = {};  // pages of the issue that are no numbered sheets, for the index

  const Job& job = examined.job;
  const Bed& bed = examined.bed;
  Figures figures() const { return examined.figures(); }
  Issue issue() const { return {job.order.order.number, job.order.order.revision, digest, draft}; }
};

std::vector<Sheet> arrangement_sheets(const SheetInput& input);
std::vector<Sheet> drill_sheets(const SheetInput& input);
std::vector<Sheet> tab_layout_sheets(const SheetInput& input);
std::vector<Sheet> frame_sheets(const SheetInput& input);
// What is to be done to a frame that stands; none where nothing is.
std::vector<Sheet> frame_change_sheets(const SheetInput& input);
std::vector<Sheet> plate_sheets(const SheetInput& input);
std::vector<Sheet> bolting_sheets(const SheetInput& input);
std::vector<Sheet> list_sheets(const SheetInput& input);
std::vector<Sheet> shop_aid_sheets(const SheetInput& input);
std::vector<Sheet> tongue_tag_sheets(const SheetInput& input);
std::vector<Sheet> contact_sheets(const SheetInput& input);
std::vector<Sheet> assembly_sheets(const SheetInput& input);

// A part's name as a file's: "tab plate" -> "tab_plate", which every machine takes.
std::string file_word(const std::string& name);

// What is on all of them, without surrounds and marks.
std::vector<Sheet> sheet_contents(const SheetInput& input);

// The first sheet: what sheets there are, what became of each since the last release, and
// how to tell their paper from another release's.
std::vector<Sheet> index_sheets(const SheetInput& input, const std::vector<Sheet>& others,
                                const std::vector<FateOfSheet>& fates);

// All of them, the index first, marked where they changed, with their surrounds, numbered
// through. Fates: of each, and of those that are gone; empty where nothing is revised.
struct SheetSet {
  std::vector<Sheet> sheets;
  std::vector<FateOfSheet> fates;
};
SheetSet issued_sheets(const SheetInput& input);
std::vector<Sheet> sheet_set(const SheetInput& input);

}  // namespace bedwright
