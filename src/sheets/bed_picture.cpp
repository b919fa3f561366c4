// Writes views, caption and stamp as SVG text.
#include "sheets/bed_picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>

#include "sheets/issue.h"

namespace bedwright {

namespace {

// The sheet, in millimetres from its upper left corner (ISO 216, A3).
constexpr Mm sheet_width = 420, sheet_height = 297, border = 10;
constexpr Mm stamp_height = 24, stamp_letters = 11.5, note_height = 2.5, note_step = 5.5;
constexpr std::size_t caption_rows_at_least = 2, caption_rows_with_code = 7;
// More than a text's estimated width, for the fonts a viewer may put in place of the one asked for.
constexpr double generous = 1.15;
// Points nearer to each other on paper are one.
constexpr Mm speck = 0.005;

// One line of text, set smaller where it would run past `room`.
void add_text(List2d& list, int layer, Vec2 at, Mm height, Mm room, Across across, const std::string& text) {
  const Mm wide = text_width(text, 1) * generous;
  list.add(Text{layer, at, wide > 0 ? std::min(height, room / wide) : height, text, across, Up::baseline, 0});
}

struct Extent {
  Vec2 low, high;
};

Extent extent(const View& view) {
  if (view.empty()) return {};
  Extent e{view.front().points.front(), view.front().points.front()};
  for (const ViewLine& line : view) {
    for (const Vec2 p : line.points) {
      e.low = {std::min(e.low.x, p.x), std::min(e.low.y, p.y)};
      e.high = {std::max(e.high.x, p.x), std::max(e.high.y, p.y)};
    }
  }
  return e;
}

// Carries the view's coordinates to the sheet's.
struct Fit {
  int reduction = 1;
  Vec2 view_centre, sheet_centre;
  Vec2 operator()(Vec2 p) const { return sheet_centre + (1.0 / reduction) * (p - view_centre); }
};

struct Pen {
  bool visible;
  ViewEdge edge;
  bool standing;
  Layer layer;
};

// In the order they are drawn.
const std::array<Pen, 8>& pens() {
  static const std::array<Pen, 8> all{{
      {false, ViewEdge::sharp, false, {"HIDDEN_SHARP", 7, LineKind::hidden, 0.13}},
      {false, ViewEdge::outline, false, {"HIDDEN_OUTLINE", 7, LineKind::hidden, 0.13}},
      {true, ViewEdge::smooth, true, {"EXISTING", 7, LineKind::continuous, 0.09}},
      {true, ViewEdge::sharp, true, {"EXISTING", 7, LineKind::continuous, 0.09}},
      {true, ViewEdge::outline, true, {"EXISTING", 7, LineKind::continuous, 0.09}},
      {true, ViewEdge::smooth, false, {"SMOOTH", 7, LineKind::continuous, 0.09}},
      {true, ViewEdge::sharp, false, {"SHARP", 7, LineKind::continuous, 0.18}},
      {true, ViewEdge::outline, false, {"OUTLINE", 7, LineKind::continuous, 0.25}},
  }};
  return all;
}

// Runs that go on where the last one ended are joined, so that dashes and corners
// come out whole.
void add_lines(List2d& list, const View& view, const Pen& pen, const Fit& fit) {
  const int layer = list.layer(pen.layer);
  Path path{layer, {}};
  for (const ViewLine& line : view) {
    if (line.visible != pen.visible || line.edge != pen.edge ||
        (pen.visible && line.standing != pen.standing))
      continue;
    const bool goes_on = !path.points.empty() && norm(fit(line.points.front()) - path.points.back()) < speck;
    if (!goes_on) {
      if (path.points.size() > 1) list.add(path);
      path.points.clear();
    }
    for (std::size_t i = goes_on ? 1 : 0; i < line.points.size(); ++i) {
      const Vec2 p = fit(line.points[i]);
      if (path.points.empty() || norm(p - path.points.back()) >= speck) path.points.push_back(p);
    }
  }
  if (path.points.size() > 1) list.add(path);
}

std::vector<std::string> caption_lines(const PictureCaption& caption) {
  std::vector<std::string> lines{fmt::format("Order {}", caption.order)};
  lines.insert(lines.end(), caption.notes.begin(), caption.notes.end());
  return lines;
}

void add_caption(List2d& list, const PictureCaption& caption, const std::vector<std::string>& lines, Mm top,
                 int reduction) {
  const bool code = !caption.digest.empty();
  const Mm right = sheet_width - border - (code ? issue_width : 0), side = 70,
           left_room = right - side - border - 6;
  const int rule = list.layer({"RULE", 7, LineKind::continuous, 0.35});
  const int words = list.layer({"WORDS", 7, LineKind::continuous, 0.25});
  list.add(Line{rule, {border, top}, {sheet_width - border, top}});
  for (std::size_t i = 0; i < lines.size(); ++i)
    add_text(list, words, {border + 3, top - static_cast<double>(i + 1) * note_step}, note_height, left_room,
             Across::left, lines[i]);
  const auto beside = [&](int row, const std::string& text) {
    add_text(list, words, {right - 3, top - row * note_step}, note_height, side, Across::right, text);
  };
  beside(1, fmt::format("Revision {}", caption.revision));
  beside(2, fmt::format("Picture reduced 1:{} on A3, not for measuring", reduction));
  if (code)
    draw_issue(list, {right, border + 1.5}, {caption.order, caption.revision, caption.digest, caption.draft},
               words);
}

void add_stamp(List2d& list) {
  const int words = list.layer({"WORDS", 7, LineKind::continuous, 0.25});
  add_text(list, words, {sheet_width / 2, sheet_height - border - 18}, stamp_letters,
           sheet_width - 2 * border - 6, Across::centre, "NOT FOR FABRICATION");
}

}  // namespace

int round_reduction(Mm width, Mm height, Mm room_width, Mm room_height) {
  const auto fits = [&](int n) { return width <= n * room_width && height <= n * room_height; };
  for (int decade = 1; decade < 1'000'000; decade *= 10) {
    for (const int tenths : {10, 12, 15, 20, 25, 30, 40, 50, 60, 80}) {
      const int n = decade * tenths / 10;
      if (n * 10 == decade * tenths && fits(n)) return n;
    }
  }
  throw std::invalid_argument("a picture this large fits no sheet");
}

Page picture_page(const View& view, const PictureCaption& caption) {
  const std::vector<std::string> lines = caption_lines(caption);
  const auto rows = static_cast<double>(
      std::max(lines.size(), caption.digest.empty() ? caption_rows_at_least : caption_rows_with_code));
  const Mm caption_top = border + rows * note_step + 2;
  const Mm top = sheet_height - border - (caption.draft ? stamp_height : 0), inset = 5;
  const Mm room_width = sheet_width - 2 * (border + inset), room_height = top - caption_top - 2 * inset;
  if (room_height < 20) throw std::invalid_argument("the caption leaves no room for the picture");
  const Extent e = extent(view);
  const Fit fit{round_reduction(e.high.x - e.low.x, e.high.y - e.low.y, room_width, room_height),
                0.5 * (e.low + e.high),
                {sheet_width / 2, (top + caption_top) / 2}};
  Page page{
      {}, sheet_width, sheet_height, fmt::format("Order {}, revision {}", caption.order, caption.revision)};
  page.list.add(Closed{page.list.layer({"BORDER", 7, LineKind::continuous, 0.7}),
                       rectangle({border, border}, {sheet_width - border, sheet_height - border})});
  for (const Pen& pen : pens()) add_lines(page.list, view, pen, fit);
  add_caption(page.list, caption, lines, caption_top, fit.reduction);
  if (caption.draft) add_stamp(page.list);
  return page;
}

}  // namespace bedwright
