// The drawing set: one function for each kind of sheet, each from the examined bed
// alone, and the whole set in order.
#pragma once

#include <vector>

#include "examine/examine.h"
#include "params/assembly_text.h"
#include "sheets/arrangement/arrangement.h"
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
  const BedViews* views = nullptr;  // without views there is no general arrangement
  AssemblyText assembly = {};       // words for the customer; without any, no assembly sheets

  const Job& job = examined.job;
  const Bed& bed = examined.bed;
  Figures figures() const { return examined.figures(); }
};

std::vector<Sheet> arrangement_sheets(const SheetInput& input);
std::vector<Sheet> drill_sheets(const SheetInput& input);
std::vector<Sheet> tab_layout_sheets(const SheetInput& input);
std::vector<Sheet> frame_sheets(const SheetInput& input);
std::vector<Sheet> plate_sheets(const SheetInput& input);
std::vector<Sheet> bolting_sheets(const SheetInput& input);
std::vector<Sheet> list_sheets(const SheetInput& input);
std::vector<Sheet> shop_aid_sheets(const SheetInput& input);
std::vector<Sheet> contact_sheets(const SheetInput& input);
std::vector<Sheet> assembly_sheets(const SheetInput& input);

// A part's name as a file's: "tab plate" -> "tab_plate", which every machine takes.
std::string file_word(const std::string& name);

// All of them with their surrounds, numbered through.
std::vector<Sheet> sheet_set(const SheetInput& input);

}  // namespace bedwright
