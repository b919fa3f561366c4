// Puts faults into a packet that is good: into its lists and drawings as text, into its
// model through the kernel.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "solid.h"

namespace inspector {

// Throws std::runtime_error when `old` is not in the file.
void replace_text(const std::filesystem::path& file, const std::string& old, const std::string& with);

// In a list: of the rows whose cells begin with these, all taken out, or a column's cell
// set or added to. Throws when there is no such row or column.
void remove_rows(const std::filesystem::path& list, const std::vector<std::string>& begin);
void set_cell(const std::filesystem::path& list, const std::vector<std::string>& begin,
              const std::string& column, const std::string& value);
void add_to_cell(const std::filesystem::path& list, const std::vector<std::string>& begin,
                 const std::string& column, double by);

// In a drawing: moves what lies on the layer, from the n-th entity of that kind on for
// `count` of them, by x (in the drawing's unit).
void move_drawn(const std::filesystem::path& file, const std::string& layer, const std::string& kind,
                double by, int count);

// In the model. Items and parts by name; throws when there is none.
void move_item(const std::filesystem::path& step, const std::string& item, Point by);
void remove_item(const std::filesystem::path& step, const std::string& item);
// Takes a box out of a part, or adds one to it, in the part's own coordinates.
void cut_part(const std::filesystem::path& step, const std::string& part, Point low, Point high);
void add_to_part(const std::filesystem::path& step, const std::string& part, Point low, Point high);

}  // namespace inspector
