// bedwright new --survey FRAME FILE: a frame file to fill in at a frame that stands, a note on
// every line, and a page to print with boxes for what is measured.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

#include "commands/commands.h"
#include "commands/new_file.h"
#include "commands/paste.h"
#include "commands/tell.h"
#include "draw/table2d.h"
#include "formats/pdf.h"
#include "params/frame.h"
#include "sheets/sheet.h"
#include "units/print.h"
#include "yaml/reader.h"

namespace bedwright {
namespace {

struct Measured {
  const char* key;
  const char* how;
};

// What is read off the frame itself, never taken from a drawing. In the order a person goes
// round it.
constexpr Measured measured[] = {
    {"name", "name or serial number, as painted or stamped on the tongue"},
    {"main.section", "depth, flange width and web thickness of a main: which channel it is"},
    {"main.spacing", "web back to web back, at the front, middle and rear; they must agree"},
    {"main.length", "each main, end to end; they must agree"},
    {"cross_member.existing", "mains' front end to the rear face of each cross member's web"},
    {"tongue.length", "mains' front end to the tongue's front cut, along the middle"},
    {"tongue.back", "mains' front end back to the tongue's rear ends"},
    {"tabs.length", "one tab, along the main"},
    {"tabs.hole_diameter", "width of a tab's slot"},
    {"tabs.slot_length", "a tab's slot, end to end; the shortest of all"},
    {"tabs.existing",
     "mains' front end to the middle of each tab's hole; where the left is not as the right list the right's "
     "here and add a line left: {existing: [...]} with its own"},
    {"tabs.existing_line", "back of the main's web out to the middle of the tabs' holes, at every tab"},
    {"tabs.plate.plate_thickness", "tab's plate, thickness"},
    {"tabs.plate.pad_thickness", "tab's pad, thickness; plate and pad together at every tab"},
    {"tabs.clip.standoff", "top of the clip above the main, at every tab"},
    {"tabs.heights",
     "top of each tab over a level line, minus where it is below: a string or a laser along each main, the "
     "two "
     "lines level with each other; an entry for each place, as - {at: 7 in, left: 0 in, right: -1/32 in}; "
     "take "
     "this line out where they are not measured, and shims are packed for the worst"},
    {"jack.existing", "mains' front end to the middle of each pair of jack plates"},
    {"jack.old_holes",
     "mains' front end to the middle of bolt holes that jacks have left in the webs; [] where there are "
     "none"},
    {"axle.existing", "mains' front end to the middle of the axle, or of the group; both sides"},
    {"axle.tyre_inside", "inner face of one tyre to that of the other"},
    {"coupler.ball_ahead", "tongue's front cut to the middle of the ball's socket"},
};

const char* how_to_measure(const std::string& key) {
  for (const Measured& m : measured)
    if (key == m.key) return m.how;
  return nullptr;
}

struct Box {
  std::string key, how, drawn;
  std::size_t places = 0;  // how many the frame it is begun from has, of what is listed
};

// Writes a frame key by key: what is measured left blank, the rest as the frame has it.
class SurveyWriter {
 public:
  static constexpr OptionalKey optional{};
  SurveyWriter(std::string& out, std::vector<Box>& boxes, std::string path, int indent)
      : out_(out), boxes_(boxes), path_(std::move(path)), indent_(indent) {}

  void text(const char* key, std::string& value, const char* doc, Need = {}) {
    if (!value.empty() || how_to_measure(path_ + key)) line(key, "\"" + value + "\"", value, doc);
  }
  void name(const char* key, Name& value, const char* doc, Need = {}) {
    if (!value.text.empty()) line(key, value.text, value.text, doc);
  }
  void flag(const char* key, bool& value, const char* doc, Need = {}) {
    line(key, value ? "true" : "false", value ? "true" : "false", doc);
  }
  void flag(const char* key, std::optional<bool>&, const char* doc, Need = {}) {
    line(key, "true", "true", doc);  // a frame's one flag: it stands
  }
  void count(const char* key, int& value, int, int, const char* doc, Need = {}) {
    line(key, std::to_string(value), std::to_string(value), doc);
  }
  void length(const char* key, Mm& value, Range range, const char* doc, Need need = {}) {
    quantity(key, Dimension::length, value, value, range, doc, need);
  }
  void length(const char* key, std::optional<Mm>& value, Range, const char* doc, Need = {}) {
    if (!value && !how_to_measure(path_ + key)) return;
    const std::string now = value ? as_written(Dimension::length, *value) : "";
    line(key, now, now, doc);
  }
  void lengths(const char* key, std::vector<Mm>& values, Range, std::size_t, const char* doc, Need = {}) {
    if (!how_to_measure(path_ + key)) return;  // what is to be done is no survey's
    line(key, "", fmt::format("{} of them", values.size()), doc);
    boxes_.back().places = values.size();
  }
  void mass(const char* key, Kg& value, Range range, const char* doc, Need need = {}) {
    quantity(key, Dimension::mass, value, value, range, doc, need);
  }
  void stress(const char* key, Mpa& value, Range range, const char* doc, Need need = {}) {
    quantity(key, Dimension::stress, value, value, range, doc, need);
  }
  void angle(const char* key, Radians& value, Range range, const char* doc, Need need = {}) {
    quantity(key, Dimension::angle, value, value / degree, range, doc, need);
  }
  template <class Enum>
  void choice(const char* key, Enum& value,
              std::initializer_list<std::pair<const char*, std::type_identity_t<Enum>>> words,
              const char* doc, Need = {}) {
    for (const auto& [word, meaning] : words)
      if (meaning == value) line(key, word, word, doc);
  }
  template <class S>
  void object(const char* key, S& value, const char* doc, Need = {}) {
    out_ += fmt::format("{:{}}{}:  # {}\n", "", indent_, key, doc);
    SurveyWriter inner(out_, boxes_, path_ + key + ".", indent_ + 2);
    describe(inner, value);
  }
  template <class S>
  void object(const char* key, std::optional<S>& value, const char* doc, Need need = {}) {
    if (value) object(key, *value, doc, need);
  }
  template <class S>
  void list(const char* key, std::vector<S>&, std::size_t, const char* doc, Need = {}) {
    if (how_to_measure(path_ + key)) line(key, "", "", doc);
  }

 private:
  void quantity(const char* key, Dimension dimension, double value, double in_range, Range range,
                const char* doc, Need need) {
    // Not stated: the loader's own way of saying so lies outside what may be written.
    if (!need.required && (in_range < range.low || in_range > range.high)) return;
    const std::string now = as_written(dimension, value);
    line(key, now, now, doc);
  }
  void line(const std::string& key, const std::string& value, const std::string& drawn, const char* doc) {
    const char* how = how_to_measure(path_ + key);
    if (how) boxes_.push_back({path_ + key, how, drawn});
    out_ += how ? fmt::format("{:{}}{}:   # MEASURE {}{}\n", "", indent_, key, how,
                              drawn.empty() ? "" : "; here " + drawn)
                : fmt::format("{:{}}{}: {}  # {}\n", "", indent_, key, value, doc);
  }

  std::string& out_;
  std::vector<Box>& boxes_;
  std::string path_;
  int indent_;
};

constexpr Mm page_wide = 279.4, page_high = 215.9, margin = 14;

// What is measured once, and what is measured at each of several places but the tabs.
Table2d table_of_boxes(const std::vector<Box>& boxes) {
  Table2d table{{"WHAT", "HOW", "HERE", "MEASURED, LEFT", "MEASURED, RIGHT"}, {}};
  constexpr Mm how_width = 72, here_width = 28;
  const auto add = [&](const Box& box) {
    const std::vector<std::string> hows = wrapped(box.how, small_text, how_width),
                                   heres = wrapped(box.drawn, small_text, here_width);
    for (std::size_t i = 0; i < std::max(hows.size(), heres.size()); ++i)
      table.rows.push_back(
          {i == 0 ? box.key : "", i < hows.size() ? hows[i] : "", i < heres.size() ? heres[i] : "", "", ""});
    // To write in: a line, or one for each place and one more.
    for (std::size_t i = 0; i < (box.places > 0 ? box.places + 1 : 1); ++i)
      table.rows.push_back({"", box.places > 0 ? fmt::format("{:>40}", i + 1) : "", "", "", ""});
  };
  for (const Box& b : boxes)
    if (!b.key.starts_with("tabs.existing") && b.key != "tabs.heights") add(b);
  add({"twist", "straight bars across both mains, front and rear, sighted over", "none"});
  add({"diagonals", "web back corner to corner, both ways; they must agree", ""});
  add({"welds", "every tab, cross member, tongue and coupler: cracks, undercut", "sound"});
  return table;
}

// Every tab by itself: a line for each the frame it is begun from has, and two more.
Table2d table_of_tabs(std::size_t tabs) {
  Table2d table{{"TAB", "HOLE, LEFT", "HOLE, RIGHT", "OUT FROM WEB, L", "OUT FROM WEB, R", "SLOT, LEFT",
                 "SLOT, RIGHT", "HEIGHT, LEFT", "HEIGHT, RIGHT"},
                {}};
  constexpr std::size_t further = 2;
  for (std::size_t i = 0; i < tabs + further; ++i) {
    table.rows.push_back({std::to_string(i + 1), "", "", "", "", "", "", "", ""});
    table.rows.push_back({"", "", "", "", "", "", "", "", ""});
  }
  return table;
}

void add_pages(std::vector<Page>& pages, const Table2d& table, const std::vector<std::string>& notes) {
  constexpr Mm note_apart = 5.5;
  const Mm head = 10 + note_apart * static_cast<double>(notes.size());
  const auto per_page =
      static_cast<std::size_t>((page_high - 2 * margin - head - 1) / (table_row_height * small_text)) - 1;
  for (std::size_t first = 0; first < table.rows.size(); first += per_page) {
    List2d list;
    const Pens pens(list);
    const auto put = [&](Mm down, Mm height, const std::string& text) {
      list.add(
          Text{pens.text, {margin, page_high - margin - down}, height, text, Across::left, Up::baseline, 0});
    };
    put(5, large_text, fmt::format("SURVEY OF A FRAME THAT STANDS, page {}", pages.size() + 1));
    for (std::size_t i = 0; i < notes.size(); ++i)
      put(11 + note_apart * static_cast<double>(i), small_text, notes[i]);
    draw_table(list, table, first, std::min(first + per_page, table.rows.size()),
               {margin, page_high - margin - head}, small_text, pens.text, pens.table);
    pages.push_back({std::move(list), page_wide, page_high, "Survey"});
  }
}

// Ruled boxes to write in, as many rows as a page holds.
std::vector<Page> pages_to_print(const std::vector<Box>& boxes, const std::string& like) {
  const std::string from_front =
                        "Everything from the mains' front ends, hooked on; to the nearest 1/32 in or 0.5 mm.",
                    who = "Frame no. ____________    by ____________    on ____________";
  std::vector<Page> pages;
  add_pages(pages, table_of_boxes(boxes), {from_front + " HERE: as " + like + " has it.", who});
  std::size_t tabs = 0;
  for (const Box& b : boxes)
    if (b.key == "tabs.existing") tabs = b.places;
  add_pages(
      pages, table_of_tabs(tabs),
      {from_front,
       "HOLE: to the middle of each tab's hole. OUT FROM WEB: back of the main's web to the hole's middle. "
       "SLOT: end to end.",
       "HEIGHT: top of the tab over a level line along each main, the two lines level with each other; minus "
       "where it is below.",
       who});
  return pages;
}

}  // namespace

ExitCode survey_command(const SurveyArguments& arguments) {
  std::ifstream in(arguments.frame, std::ios::binary);
  std::stringstream content;
  content << in.rdbuf();
  if (!in) {
    tell("bedwright: {} cannot be read; name a frame file like the frame to be measured\n", arguments.frame);
    return bad_input;
  }
  FrameFile frame;
  std::vector<Problem> problems;
  read_document(parse_document(arguments.frame, content.str()), frame, problems);
  if (!problems.empty()) {
    for (const Problem& p : problems) tell("{}\n", to_line(p));
    return bad_input;
  }
  const std::filesystem::path file = arguments.file,
                              page = std::filesystem::path(file).replace_extension(".pdf");
  std::string text = fmt::format(
      "# Survey of a frame that stands, to be filled in. Begun from {}.\n"
      "# Write what you measured behind each key marked MEASURE; the rest is taken from there:\n"
      "# check it too. Places run from the mains' front end. Until all are filled in the file does\n"
      "# not read, and says which line is empty.\n",
      std::filesystem::path(arguments.frame).filename().string());
  std::vector<Box> boxes;
  SurveyWriter writer(text, boxes, "", 0);
  describe(writer, frame);
  for (const std::filesystem::path& one : {file, page})
    if (const std::string fault = no_new_file_there(one); !fault.empty()) {
      tell("bedwright: {}\n", fault);
      return bad_input;
    }
  const std::string pdf =
      pages_pdf(pages_to_print(boxes, std::filesystem::path(arguments.frame).filename().string()),
                {"Survey of a frame that stands", ""});
  for (const auto& [one, bytes] : {std::pair(file, text), std::pair(page, pdf)})
    if (const std::string fault = write_new_file(one, bytes); !fault.empty()) {
      tell("bedwright: {}\n", fault);
      return bad_input;
    }
  fmt::print("Wrote {} to fill in and {} to print and take along.\n", file.string(), page.string());
  return released;
}

}  // namespace bedwright
