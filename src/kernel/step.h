// The bed as a STEP file (ISO 10303-21) of schema AP214: an assembly with one
// product for each distinct part, names, colours, millimetres. The kernel stays behind it.
#pragma once

#include <filesystem>
#include <string>

#include "bed/bed.h"

namespace bedwright {

// What the file says of itself. Given, never taken from the clock or the
// machine, so that the same bed makes the same bytes.
struct StepHeader {
  std::string name;  // of the bed: the order's number; names the top product too
  std::string date;  // ISO 8601: "2024-05-31" (midnight is added) or with "T08:30:00"
  std::string author;
  std::string organisation;
  std::string program;  // "bedwright 0.1.0"
  bool draft = false;   // what its holes leave no solid is shown without them, and its name says so
};

// The file's whole text. Only shown items; the component's name is the item's,
// the product's the part's. Throws std::runtime_error with the reason.
std::string step_text(const Bed& bed, const StepHeader& header);

// Writes that text. Throws std::runtime_error (naming the path) when it cannot.
void write_step(const Bed& bed, const StepHeader& header, const std::filesystem::path& path);

}  // namespace bedwright
