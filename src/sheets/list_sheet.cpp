// The packet's lists on paper, from the very text of the list files.
#include <algorithm>

#include "sheets/flow.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

// Rows of RFC 4180 text; the apostrophe that keeps a spreadsheet from running a
// cell is taken off again.
std::vector<std::vector<std::string>> rows_of(const std::string& csv) {
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row;
  std::string cell;
  bool quoted = false;
  const auto end_cell = [&] {
    if (cell.size() > 1 && cell[0] == '\'') cell.erase(0, 1);
    row.push_back(std::move(cell));
    cell.clear();
  };
  for (std::size_t i = 0; i < csv.size(); ++i) {
    const char c = csv[i];
    if (quoted) {
      if (c != '"') {
        cell += c;
      } else if (i + 1 < csv.size() && csv[i + 1] == '"') {
        cell += csv[++i];
      } else {
        quoted = false;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      end_cell();
    } else if (c == '\n') {
      end_cell();
      rows.push_back(std::move(row));
      row.clear();
    } else if (c != '\r') {
      cell += c;
    }
  }
  return rows;
}

// The columns kept, without those that are empty throughout.
Table2d table_of(const PrintedList& list) {
  const std::vector<std::vector<std::string>> rows = rows_of(list.csv);
  Table2d table;
  if (rows.empty()) return table;
  table.rows.resize(rows.size() - 1);
  for (std::size_t c = 0; c < rows[0].size(); ++c) {
    const bool out = std::find(list.left_out.begin(), list.left_out.end(), rows[0][c]) != list.left_out.end();
    const bool empty =
        std::all_of(rows.begin() + 1, rows.end(), [&](const auto& r) { return r.at(c).empty(); });
    if (out || empty) continue;
    table.head.push_back(rows[0][c]);
    for (std::size_t r = 1; r < rows.size(); ++r) table.rows[r - 1].push_back(rows[r].at(c));
  }
  return table;
}

// A table too wide for the sheet becomes several, each with the first column.
std::vector<Table2d> split(const Table2d& table, Mm width) {
  std::vector<Table2d> parts;
  const auto add = [&](Table2d& to, std::size_t column) {
    to.head.push_back(table.head[column]);
    for (std::size_t r = 0; r < table.rows.size(); ++r) to.rows[r].push_back(table.rows[r][column]);
  };
  for (std::size_t c = 1; c < table.head.size(); ++c) {
    if (!parts.empty()) {
      Table2d wider = parts.back();
      add(wider, c);
      if (table_width(wider, small_text) <= width) {
        parts.back() = wider;
        continue;
      }
    }
    Table2d next;
    next.rows.resize(table.rows.size());
    add(next, 0);
    add(next, c);
    parts.push_back(next);
  }
  return parts;
}

}  // namespace

std::vector<Sheet> list_sheets(const SheetInput& in) {
  if (in.lists.empty()) return {};
  Sheet form;
  form.title = "LISTS";
  form.file = "lists";
  Flow flow(form, drawing_space(paper_of(in.job.order.order), in.draft));
  for (const PrintedList& list : in.lists) {
    if (table_of(list).rows.empty()) {
      flow.below();
      flow.notes(list.caption,
                 {stands(in.job.frame) ? "Nothing: the frame stands." : "Nothing on this list."}, small_text,
                 150);
      continue;
    }
    for (const Table2d& part : split(table_of(list), flow.width())) {
      flow.below();
      flow.table(list.caption, part, small_text);
    }
  }
  return std::move(flow).sheets();
}

}  // namespace bedwright
