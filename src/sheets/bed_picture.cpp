// Writes views, caption and stamp as SVG text.
#include "sheets/bed_picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace bedwright {

namespace {

// The sheet, in millimetres from its upper left corner (ISO 216, A3).
constexpr Mm sheet_width = 420, sheet_height = 297, border = 10;
constexpr Mm stamp_height = 24, note_size = 3.5, note_step = 5.5;
constexpr std::size_t caption_rows_at_least = 2;
// Width of a character for its size, generous for the fonts a viewer may put in
// place of the one asked for.
constexpr double wide_character = 0.65;

// "-0.00" is "0.00".
std::string number(Mm value) {
  const std::string text = fmt::format("{:.2f}", value);
  return text == "-0.00" ? "0.00" : text;
}

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      default:
        out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    }
  }
  return out;
}

std::size_t characters(const std::string& utf8) {
  return std::count_if(utf8.begin(), utf8.end(), [](char c) { return (c & 0xC0) != 0x80; });
}

// One line of text, set smaller where it would run past `space`.
void add_text(std::string& out, Vec2 at, Mm size, Mm space, const char* anchor, const std::string& text) {
  const auto length = static_cast<double>(std::max<std::size_t>(1, characters(text)));
  fmt::format_to(std::back_inserter(out),
                 "<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\">{}</text>\n", number(at.x),
                 number(at.y), number(std::min(size, space / (wide_character * length))), anchor,
                 escaped(text));
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

// Carries the view's coordinates to the sheet's (y down).
struct Fit {
  int reduction = 1;
  Vec2 view_centre, sheet_centre;
  Vec2 operator()(Vec2 p) const {
    const Vec2 d = (1.0 / reduction) * (p - view_centre);
    return {sheet_centre.x + d.x, sheet_centre.y - d.y};
  }
};

struct Pen {
  bool visible;
  ViewEdge edge;
  const char* style;
};
constexpr Pen pens[] = {
    {false, ViewEdge::sharp, "stroke-width=\"0.13\" stroke-dasharray=\"1.5 0.75\""},
    {false, ViewEdge::outline, "stroke-width=\"0.13\" stroke-dasharray=\"1.5 0.75\""},
    {true, ViewEdge::smooth, "stroke-width=\"0.09\""},
    {true, ViewEdge::sharp, "stroke-width=\"0.18\""},
    {true, ViewEdge::outline, "stroke-width=\"0.25\""},
};

// Runs that go on where the last one ended are joined, so that dashes and
// corners come out whole.
void add_lines(std::string& out, const View& view, const Pen& pen, const Fit& fit) {
  std::string path, pen_at;
  for (const ViewLine& line : view) {
    if (line.visible != pen.visible || line.edge != pen.edge) continue;
    for (std::size_t i = 0; i < line.points.size(); ++i) {
      const Vec2 p = fit(line.points[i]);
      const std::string at = number(p.x) + " " + number(p.y);
      if (at != pen_at) path += (i == 0 ? "M" : "L") + at + "\n";
      pen_at = at;
    }
  }
  if (path.empty()) return;
  fmt::format_to(std::back_inserter(out), "<path {} d=\"{}\"/>\n", pen.style, path);
}

std::vector<std::string> caption_lines(const PictureCaption& caption) {
  std::vector<std::string> lines{fmt::format("Order {}", caption.order)};
  lines.insert(lines.end(), caption.notes.begin(), caption.notes.end());
  return lines;
}

void add_caption(std::string& out, const PictureCaption& caption, const std::vector<std::string>& lines,
                 Mm top, int reduction) {
  const Mm right = sheet_width - border, side = 70, left_space = right - side - border - 6;
  fmt::format_to(std::back_inserter(out),
                 "<path stroke-width=\"0.35\" d=\"M{} {}L{} {}\"/>\n<g fill=\"black\" stroke=\"none\">\n",
                 number(border), number(top), number(right), number(top));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Mm y = top + static_cast<double>(i + 1) * note_step;
    add_text(out, {border + 3, y}, note_size, left_space, "start", lines[i]);
  }
  add_text(out, {right - 3, top + note_step}, note_size, side, "end",
           fmt::format("Revision {}", caption.revision));
  add_text(out, {right - 3, top + 2 * note_step}, note_size, side, "end",
           fmt::format("Picture reduced 1:{} on A3, not for measuring", reduction));
  out += "</g>\n";
}

void add_stamp(std::string& out) {
  out += "<g fill=\"black\" stroke=\"none\" font-weight=\"bold\">\n";
  add_text(out, {sheet_width / 2, border + 18}, 16, sheet_width - 2 * border - 6, "middle",
           "NOT FOR FABRICATION");
  out += "</g>\n";
}

}  // namespace

int round_reduction(Mm width, Mm height, Mm space_width, Mm space_height) {
  const auto fits = [&](int n) { return width <= n * space_width && height <= n * space_height; };
  for (int decade = 1; decade < 1'000'000; decade *= 10) {
    for (const int tenths : {10, 12, 15, 20, 25, 30, 40, 50, 60, 80}) {
      const int n = decade * tenths / 10;
      if (n * 10 == decade * tenths && fits(n)) return n;
    }
  }
  throw std::invalid_argument("a picture this large fits no sheet");
}

std::string picture_svg(const View& view, const PictureCaption& caption) {
  const std::vector<std::string> lines = caption_lines(caption);
  const auto rows = static_cast<double>(std::max(lines.size(), caption_rows_at_least));
  const Mm caption_top = sheet_height - border - rows * note_step - 2;
  const Mm top = border + (caption.draft ? stamp_height : 0), inset = 5;
  const Mm space_width = sheet_width - 2 * (border + inset), space_height = caption_top - top - 2 * inset;
  if (space_height < 20) throw std::invalid_argument("the caption leaves no room for the picture");
  const Extent e = extent(view);
  const Fit fit{round_reduction(e.high.x - e.low.x, e.high.y - e.low.y, space_width, space_height),
                0.5 * (e.low + e.high),
                {sheet_width / 2, (top + caption_top) / 2}};
  std::string out = fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" height=\"{1}mm\" "
      "viewBox=\"0 0 {0} {1}\" font-family=\"sans-serif\">\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"white\"/>\n"
      "<g fill=\"none\" stroke=\"black\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n"
      "<rect x=\"{2}\" y=\"{2}\" width=\"{3}\" height=\"{4}\" stroke-width=\"0.7\"/>\n",
      sheet_width, sheet_height, border, sheet_width - 2 * border, sheet_height - 2 * border);
  for (const Pen& pen : pens) add_lines(out, view, pen, fit);
  add_caption(out, caption, lines, caption_top, fit.reduction);
  if (caption.draft) add_stamp(out);
  return out + "</g>\n</svg>\n";
}

void write_picture_svg(const View& view, const PictureCaption& caption, const std::filesystem::path& path) {
  std::ofstream file(path, std::ios::binary);
  file << picture_svg(view, caption);
  file.close();
  if (!file) throw std::runtime_error(fmt::format("{}: cannot be written", path.string()));
}

}  // namespace bedwright
