// The customer's assembly sheets: the shop's words, with the bed's figures in them,
// and pictures and tables where the words ask for them.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "bed/names.h"
#include "rules/fit/bolt_kinds.h"
#include "sheets/aids/aids.h"
#include "sheets/assembly/assembly_figures.h"
#include "sheets/assembly/assembly_pictures.h"
#include "sheets/bolts/bolt_kinds.h"
#include "sheets/flow.h"

namespace bedwright {
namespace {

constexpr Mm column_width = 188, line_pitch = 1.6, indent = 9;

Table2d section_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{{"PLACE", "LEFT", "RIGHT", "FRONT END AT", "REAR END AT"}, {}};
  for (int s = 1; s <= in.bed.track.sections; ++s) {
    const Box3 box = bounds(in.bed, in.bed.item({Kind::rail, Side::right, s}));
    table.rows.push_back({fmt::format("{}", s), mark({Kind::rail, Side::left, s}),
                          mark({Kind::rail, Side::right, s}), figures.customer(box.low.x),
                          figures.customer(box.high.x)});
  }
  return table;
}

Table2d bolt_table(const SheetInput& in) {
  const Figures figures = in.figures();
  Table2d table{{"BOLT", "SIZE", "LENGTH", "FOR", "UNDER HEAD", "UNDER NUT", "WRENCH", "COUNT"}, {}};
  for (const BoltKind& k : track_bolt_kinds(in)) {
    std::vector<std::string> uses;
    for (const Kind use : k.uses) uses.push_back(role_word(use));
    table.rows.push_back({std::string(1, k.letter), k.size.name, bolt_length_text(k.size, k.length),
                          listed_words(uses), k.under_head, k.under_nut, figures.customer(k.size.wrench),
                          fmt::format("{}", k.bolts.size())});
  }
  return table;
}

Table2d bunk_table(const SheetInput& in) {
  const TrackOrder& track = in.job.order.track;
  Table2d table{{"BUNK", "BOLTS BEHIND FRONT END", "CARRIES"}, {}};
  int number = 0;
  for (const BunkPlace& bunk : in.bed.track.bunks) {
    ++number;
    std::vector<std::string> what;
    if (std::find(track.log_stops.begin(), track.log_stops.end(), number) != track.log_stops.end())
      what.push_back("log stop");
    if (std::any_of(track.clamps.begin(), track.clamps.end(),
                    [&](const ClampPlace& c) { return c.bunk == number; }))
      what.push_back("clamp");
    table.rows.push_back({fmt::format("{}", number), in.figures().customer(bunk.x), listed_words(what)});
  }
  return table;
}

// One block of prose: a heading and what follows it, as a picture.
class Block {
 public:
  Block() : pens_(list_) {}
  bool empty() const { return list_.entities.empty(); }
  Mm height() const { return -y_; }
  List2d take() { return std::move(list_); }

  // How high the line will be.
  static Mm needs(const AssemblyLine& line) {
    const auto rows = static_cast<double>(wrapped(line.text, height_of(line), width_of(line)).size());
    return rows * line_pitch * height_of(line) + (line.kind == '=' ? 5 : line.kind == '!' ? 8 : 2.5);
  }

  // `number` is a step's.
  void add(const AssemblyLine& line, int number) {
    const Mm h = height_of(line), top = y_;
    const Mm left = line.kind == '=' ? 0 : line.kind == '!' ? caution_left : indent;
    y_ -= line.kind == '=' ? 1 : line.kind == '!' ? 4.5 : 1.5;
    bool first = true;
    for (const std::string& l : wrapped(line.text, h, width_of(line))) {
      y_ -= line_pitch * h;
      if (first && line.kind == '-') put({0, y_}, fmt::format("{}.", number), h);
      if (first && line.kind == '*')
        list_.add(Closed{pens_.thin, rectangle({1, y_ - 0.2}, {1 + h, y_ + h - 0.2})});
      if (first && line.kind == '!') put({2, y_}, "CAUTION", h);
      put({left, y_}, l, h);
      first = false;
    }
    if (line.kind == '=') {
      y_ -= 1.8;
      list_.add(Line{pens_.outline, {0, y_}, {column_width, y_}});
    }
    if (line.kind == '!') {
      y_ -= 2;
      list_.add(Closed{pens_.outline, rectangle({0, y_}, {column_width, top - 3})});
    }
    y_ = std::min(y_, top - needs(line));
    list_.passages.push_back({{{0, y_}, {column_width, top}}, line.text});
  }

 private:
  static constexpr Mm caution_left = 28;
  static Mm height_of(const AssemblyLine& line) { return line.kind == '=' ? large_text : bench_text; }
  static Mm width_of(const AssemblyLine& line) {
    return line.kind == '='   ? column_width
           : line.kind == '!' ? column_width - caution_left - 3
                              : column_width - indent;
  }
  void put(Vec2 at, const std::string& text, Mm h) {
    list_.add(Text{pens_.text, at, h, text, Across::left, Up::baseline, 0});
  }

  List2d list_;
  Pens pens_;
  Mm y_ = 0;
};

class Writer {
 public:
  Writer(const SheetInput& in, Flow& flow, Mm page_height)
      : in_(in), flow_(flow), page_height_(page_height) {}

  void write(const AssemblyText& text) {
    letterhead(text.letterhead);
    for (const AssemblyLine& line : text.lines) {
      if (line.kind == '@') {
        flush();
        insert(line.text);
        continue;
      }
      if (line.kind == '=' || block_.height() + Block::needs(line) > page_height_) flush();
      block_.add(line, line.kind == '-' ? ++number_ : 0);
    }
    flush();
  }

 private:
  void flush() {
    if (!block_.empty()) flow_.picture(block_.take());
    block_ = Block();
  }

  void letterhead(const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    List2d list;
    const Pens pens(list);
    Mm y = 0;
    for (const std::string& line : lines) {
      const Mm h = &line == &lines.front() ? 7 : bench_text;
      for (const std::string& l : wrapped(line, h, flow_.width())) {
        y -= 1.7 * h;
        list.add(Text{pens.text, {0, y}, h, l, Across::left, Up::baseline, 0});
      }
    }
    flow_.picture(list);
    flow_.below();
  }

  void insert(const std::string& name) {
    if (name == "section_strip") {
      flow_.below();
      flow_.picture(section_strip(in_, flow_.width()));
      flow_.below();
    } else if (name == "rail_on_tab") {
      flow_.picture(rail_on_tab(in_));
    } else {
      const std::map<std::string, std::pair<const char*, Table2d (*)(const SheetInput&)>> tables{
          {"section_table", {"RAIL SECTIONS, behind the front end of the track", section_table}},
          {"bolt_table", {"BOLTS BY LETTER", bolt_table}},
          {"bunk_table", {"BUNKS", bunk_table}},
          {"spacer_table", {"SPACERS AND BAR CLAMPS", spacer_table}},
          {"check_table", {"MEASURED AT THE END", check_table}}};
      const auto& [caption, make] = tables.at(name);
      const Table2d table = make(in_);
      if (!table.rows.empty()) whole(caption, table);
    }
  }

  // On one sheet where a sheet holds it.
  void whole(const char* caption, const Table2d& table) {
    List2d list;
    const Pens pens(list);
    list.add(Text{pens.text, {0, 0}, bench_text, caption, Across::left, Up::baseline, 0});
    draw_table(list, table, 0, table.rows.size(), {0, -1.2 * bench_text}, bench_text, pens.text, pens.table);
    const Box2 box = bounds(list);
    if (box.width() <= flow_.width() && box.height() <= page_height_) {
      flow_.picture(list);
    } else {
      flow_.table(caption, table, bench_text);
    }
  }

  const SheetInput& in_;
  Flow& flow_;
  Mm page_height_;
  Block block_;
  int number_ = 0;
};

}  // namespace

const std::vector<std::string>& assembly_pictures() {
  static const std::vector<std::string> names{"section_strip", "rail_on_tab",  "section_table", "bolt_table",
                                              "bunk_table",    "spacer_table", "check_table"};
  return names;
}

std::vector<Sheet> assembly_sheets(const SheetInput& in) {
  if (in.assembly.lines.empty()) return {};
  Sheet form;
  form.title = "ASSEMBLY, FOR THE CUSTOMER";
  form.file = "assembly";
  form.scale = "AS NOTED";
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  Flow flow(form, space);
  Writer(in, flow, space.height()).write(in.assembly);
  return std::move(flow).sheets();
}

}  // namespace bedwright
