// Composes views, strips and tables of one member on pages.
#include "sheets/drill/drill.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

#include "bed/names.h"
#include "draw/table2d.h"
#include "formats/dxf.h"
#include "sheets/drill/drill_rows.h"
#include "sheets/drill/drill_strip.h"
#include "sheets/drill/drill_tables.h"

namespace bedwright {
namespace {

constexpr Mm inside_margin = 5;  // from the frame, on paper
// A hole smaller than this on paper cannot be told from its neighbour's dot (common practice).
constexpr Mm least_hole_on_paper = 1.8;
constexpr double scale_step = 1.08;
constexpr double most_scale = 500;  // a 25 m member is 61 of these sheets wide
constexpr int most_strips = 12;

// The next reduction of ISO 5455 or one of its usual steps between, at least `n`.
double round_reduction(double n) {
  for (double tens = 1;; tens *= 10)
    for (const double step : {1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0})
      if (step * tens >= n && step * tens == std::floor(step * tens)) return step * tens;
}

struct Drilled {
  const Part& part;
  const Member& member;
  DrillRows rows;
  Setting setting;
  int quantity = 0;
  const Heading& heading;
  DrillPaper paper;
};

// Fills one page from the top; the pen is at the lowest free place.
class Page {
 public:
  Page(double scale, const DrillPaper& paper)
      : scale_(scale), text_(drill_text_on_paper * scale), paper_(paper) {
    if (paper.alone) {
      const int frame = list.layer({"FRAME", 8, LineKind::continuous, 0.5});
      list.add(Closed{frame, rectangle({0, 0}, {scale * paper.width, scale * paper.height})});
    }
    y = scale * (paper.height - margin(paper));
  }
  static Mm margin(const DrillPaper& paper) { return paper.alone ? inside_margin : 0; }
  Mm left() const { return scale_ * margin(paper_); }
  Mm right() const { return scale_ * (paper_.width - margin(paper_)); }
  Mm bottom() const { return scale_ * margin(paper_); }

  void words(const std::string& text, Mm height) {
    const int layer = list.layer({"TEXT", 7});
    const Mm top = y;
    for (const std::string& line : wrapped(text, height, right() - left())) {
      y -= 1.6 * height;
      list.add(Text{layer, {left(), y + 0.3 * height}, height, line, Across::left, Up::baseline, 0});
    }
    list.passages.push_back({{{left(), y}, {right(), top}}, text});
  }

  // False, and nothing placed, when it is too wide or too high for what is left.
  bool view(const List2d& view) {
    const Box2 box = bounds(view);
    const Mm gap = 2 * text_;
    if (box.width() > right() - left() || box.height() + gap > y - bottom()) return false;
    list.append(view, Vec2{left(), y - gap} - Vec2{box.low.x, box.high.y});
    list.passages.push_back(
        {{{left(), y - gap - box.height()}, {left() + box.width(), y - gap}}, fingerprint(view), {}, true});
    y -= box.height() + gap;
    return true;
  }

  List2d list;
  Mm y = 0;

 private:
  double scale_;
  Mm text_;
  DrillPaper paper_;
};

void heading_lines(Page& page, const Drilled& s, Mm text) {
  const Heading& h = s.heading;
  const Side hand = s.setting.hand;
  const char* const which = hand == Side::left    ? "   (LEFT HAND)"
                            : hand == Side::right ? "   (RIGHT HAND)"
                                                  : "";
  page.words(fmt::format("DRILL: {}{}", name(s.part), which), 1.8 * text);
  const Figures figures = h.figures();
  page.words(fmt::format("{}, {}, length {}, make {}", s.member.section.name, s.part.material,
                         figures.tape_to_make(s.member.length), s.quantity),
             text);
  if (s.paper.alone)
    page.words(fmt::format("Order {}, revision {}, {}, for {}{}{}", h.number, h.revision, h.date, h.customer,
                           h.shop.empty() ? h.shop : fmt::format(", {}", h.shop),
                           s.paper.issue.empty() ? "" : fmt::format(" ({})", s.paper.issue)),
               text);
  page.words(
      fmt::format(
          "Units: {}. {}Every distance is from {} or the edge named, never from hole to hole.",
          figures.exact_beside() ? "inches by the tape; exact inches and mm in the table" : "millimetres",
          s.paper.alone ? "The model is drawn 1:1 in mm. " : "", words_of(s.setting.first_end)),
      text);
  if (!s.setting.note.empty()) page.words(s.setting.note, text);
  page.words(
      "CAUTION: Check one part against this sheet before drilling the rest. Deburr holes. Eye protection.",
      text);
}

struct Views {
  std::vector<List2d> strips;
  std::vector<int> unlabelled;
};

// The fewest strips of a face that are no wider than the page.
std::optional<Views> views(const Drilled& s, double scale) {
  const Mm text = drill_text_on_paper * scale, width = scale * (s.paper.width - 2 * Page::margin(s.paper));
  const StripLook look{text, s.setting.first_end, s.setting.upright, s.heading};
  Views out;
  for (const Face face : s.rows.faces) {
    bool placed = false;
    const int least = std::max(1, static_cast<int>(face_bounds(s.member, face).width() / width));
    for (int n = least; n <= most_strips && !placed; ++n) {
      const std::vector<Mm> cuts = strip_cuts(s.member, s.rows, face, n, 1.5 * text);
      std::vector<Strip> strips;
      for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        strips.push_back(drill_strip(s.member, s.rows, face, cuts, i, look));
      }
      placed = std::all_of(strips.begin(), strips.end(),
                           [&](const Strip& strip) { return bounds(strip.list).width() <= width; });
      if (!placed) continue;
      for (Strip& strip : strips) {
        out.strips.push_back(std::move(strip.list));
        out.unlabelled.insert(out.unlabelled.end(), strip.unlabelled.begin(), strip.unlabelled.end());
      }
    }
    if (!placed) return std::nullopt;
  }
  return out;
}

// Tables set side by side from the pen down; rows that find no room stay.
class TableFlow {
 public:
  TableFlow(Page& page, Mm text) : page_(page), text_(text), x_(page.left()), top_(page.y - 1.5 * text) {}

  // Draws rows from `next` on and moves it past what was drawn.
  void put(const Table2d& table, const std::string& caption, std::size_t& next) {
    const Mm width = std::max(table_width(table, text_), text_width(caption, text_));
    const Mm row = table_row_height * text_;
    while (next < table.rows.size() && x_ + width <= page_.right()) {
      const double space = std::floor((top_ - 1.5 * text_ - page_.bottom()) / row) - 1;
      if (space < 1) return;
      const std::size_t last = std::min(table.rows.size(), next + static_cast<std::size_t>(space));
      const int words = page_.list.layer({"TEXT", 7}), rules = page_.list.layer({"TABLE", 8});
      page_.list.add(Text{words, {x_, top_ - text_}, text_, caption, Across::left, Up::baseline, 0});
      draw_table(page_.list, table, next, last, {x_, top_ - 1.5 * text_}, text_, words, rules);
      next = last;
      x_ += width + 3.1 * text_;  // and the mark of a change
    }
  }

 private:
  Page& page_;
  Mm text_, x_, top_;
};

// Every page is begun with the heading.
class Pages {
 public:
  Pages(const Drilled& s, double scale) : s_(s), scale_(scale) { begin(); }
  Page& page() { return pages_.back(); }
  void begin() {
    pages_.emplace_back(scale_, s_.paper);
    heading_lines(page(), s_, drill_text_on_paper * scale_);
  }
  // False when the view does not even fit a page of its own.
  bool view(const List2d& view) {
    if (page().view(view)) return true;
    begin();
    return page().view(view);
  }
  // False when not even one row fits a page of its own.
  bool tables() {
    const Mm text = drill_text_on_paper * scale_;
    const Table2d sizes = size_table(s_.rows, s_.heading);
    const Table2d holes = hole_table(s_.rows, s_.member.section, s_.setting.upright, s_.heading);
    const std::string caption =
        fmt::format("HOLES: along from {} (0), across from the edge named", words_of(s_.setting.first_end));
    std::size_t size = 0, hole = 0;
    for (bool fresh = false;; fresh = true) {
      const std::size_t before = size + hole;
      TableFlow flow(page(), text);
      flow.put(sizes, "SIZES", size);
      if (size == sizes.rows.size()) flow.put(holes, caption, hole);
      if (hole == holes.rows.size()) return true;
      if (fresh && before == size + hole) return false;
      begin();
    }
  }
  std::vector<List2d> lists() {
    std::vector<List2d> out;
    for (Page& p : pages_) out.push_back(std::move(p.list));
    return out;
  }

 private:
  const Drilled& s_;
  double scale_;
  std::vector<Page> pages_;
};

// All pages at one scale; nothing when something does not fit even alone.
std::optional<DrillDrawing> composed(const Drilled& s, double scale) {
  const std::optional<Views> shown = views(s, scale);
  if (!shown) return std::nullopt;
  Pages pages(s, scale);
  for (const List2d& strip : shown->strips) {
    if (!pages.view(strip)) return std::nullopt;
  }
  if (!pages.tables()) return std::nullopt;
  return DrillDrawing{pages.lists(), scale, drill_text_on_paper * scale, shown->strips.size(),
                      shown->unlabelled};
}

void finish(DrillDrawing& drawing, const Drilled& s) {
  for (std::size_t i = 0; i < drawing.pages.size(); ++i) {
    List2d& page = drawing.pages[i];
    page.comments = {
        "UNITS: millimetres, scale 1:1",
        fmt::format("Drill drawing of {}, order {}, revision {}, page {} of {}", name(s.part),
                    s.heading.number, s.heading.revision, i + 1, drawing.pages.size()),
        "Plot the frame to fill an 11 x 17 in sheet",
    };
    if (drawing.pages.size() == 1 || !s.paper.alone) continue;
    const Mm inside = inside_margin * drawing.reduction;
    page.add(Text{page.layer({"TEXT", 7}),
                  {s.paper.width * drawing.reduction - inside, s.paper.height * drawing.reduction - inside},
                  drawing.text_height,
                  fmt::format("PAGE {} OF {}", i + 1, drawing.pages.size()),
                  Across::right,
                  Up::top,
                  0});
  }
}

}  // namespace

DrillDrawing drill_drawing(const Bed& bed, int part_index, const Heading& heading, const DrillPaper& paper) {
  const Part& part = bed.parts.at(static_cast<std::size_t>(part_index));
  const Member* member = std::get_if<Member>(&part.form);
  if (member == nullptr || part.origin != Origin::made) {
    throw std::invalid_argument(fmt::format("drill drawing of {}: not a member the shop makes", name(part)));
  }
  const Drilled s{part,    *member, drill_rows(*member), setting(bed, part_index), bed.count(part_index),
                  heading, paper};
  if (s.rows.rows.empty()) {
    throw std::invalid_argument(fmt::format("drill drawing of {}: no holes to make", name(part)));
  }
  Mm smallest = std::numeric_limits<double>::infinity();
  for (const DrillSize& size : s.rows.sizes) smallest = std::min(smallest, size.hole.diameter);
  // From large and in many strips to small and in few: the fewest pages, of those
  // the fewest strips, of those the largest drawing.
  std::optional<DrillDrawing> best;
  const double least = std::max(0.25, member->length / (most_strips * paper.width));
  const auto next = [&](double scale) {
    return paper.alone ? scale * scale_step : round_reduction(scale * (1 + same_place));
  };
  for (double scale = paper.alone ? least : round_reduction(least);
       scale <= (best ? smallest / least_hole_on_paper : most_scale); scale = next(scale)) {
    std::optional<DrillDrawing> drawing = composed(s, scale);
    if (!drawing) continue;
    const auto cost = [](const DrillDrawing& d) { return std::pair(d.pages.size(), d.strips); };
    if (!best || cost(*drawing) < cost(*best)) best = std::move(drawing);
    if (cost(*best) == std::pair(std::size_t{1}, s.rows.faces.size())) break;
  }
  if (!best) throw std::invalid_argument(fmt::format("drill drawing of {}: fits no page", name(part)));
  finish(*best, s);
  return std::move(*best);
}

std::vector<std::string> drill_files(const DrillDrawing& drawing) {
  std::vector<std::string> files;
  for (const List2d& page : drawing.pages) files.push_back(dxf(page));
  return files;
}

}  // namespace bedwright
