// Writes a List2d as DXF groups: header, tables of layers and line types, entities.
#include "formats/dxf.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <stdexcept>

namespace bedwright {
namespace {

const char* line_type(LineKind kind) {
  switch (kind) {
    case LineKind::continuous:
      return "CONTINUOUS";
    case LineKind::hidden:
      return "HIDDEN";
    case LineKind::centre:
      return "CENTER";
  }
  throw std::logic_error("dxf: unknown line kind");
}

// One code point of UTF-8 at `i`, which moves past it; U+FFFD for bad bytes.
std::uint32_t next_point(const std::string& s, std::size_t& i) {
  const auto byte = [&](std::size_t k) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(s[k]));
  };
  const std::uint32_t lead = byte(i++);
  if (lead < 0x80) return lead;
  const int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC0 ? 1 : -1;
  if (more < 0) return 0xFFFD;
  std::uint32_t point = lead & (0x3FU >> more);
  for (int k = 0; k < more; ++k) {
    if (i >= s.size() || (byte(i) & 0xC0U) != 0x80U) return 0xFFFD;
    point = point << 6 | (byte(i++) & 0x3FU);
  }
  return point;
}

// '%%' begins a control code and '^' a control character in DXF text; both are
// written so that a reader shows what was meant.
std::string dxf_text(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const bool pair = text.compare(i, 2, "%%") == 0;
    const std::uint32_t point = next_point(text, i);
    if (pair) {
      out += "%%%%%%";
      ++i;
    } else if (point < 0x20 || point == 0x7F) {
      out += ' ';
    } else if (point == '^') {
      out += "^ ";
    } else if (point < 0x80) {
      out += static_cast<char>(point);
    } else {
      out += fmt::format("\\U+{:04X}", std::min<std::uint32_t>(point, 0xFFFD));
    }
  }
  return out;
}

void check_layer(const std::string& name) {
  const bool fits = !name.empty() && name.size() <= 31 && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '$';
  });
  if (!fits) throw std::invalid_argument(fmt::format("dxf: '{}' is no layer name of release 12", name));
}

class Writer {
 public:
  Writer(const List2d& list, double scale) : list_(list), scale_(scale) {}

  std::string run() {
    for (const Layer& l : list_.layers) check_layer(l.name);
    for (const std::string& c : list_.comments) put(999, dxf_text(c));
    header();
    tables();
    put(0, "SECTION");
    put(2, "BLOCKS");
    put(0, "ENDSEC");
    put(0, "SECTION");
    put(2, "ENTITIES");
    for (const Entity& e : list_.entities) std::visit([this](const auto& x) { entity(x); }, e);
    put(0, "ENDSEC");
    put(0, "EOF");
    return std::move(out_);
  }

 private:
  void put(int group, const std::string& value) { out_ += fmt::format("{:>3}\r\n{}\r\n", group, value); }
  void put(int group, int value) { put(group, fmt::format("{}", value)); }
  void number(int group, double value) { put(group, dxf_number(value)); }
  void point(int group, Vec2 p) {
    number(group, scale_ * p.x);
    number(group + 10, scale_ * p.y);
    number(group + 20, 0);
  }
  void begin(const char* kind, int layer) {
    put(0, kind);
    put(8, list_.layers.at(static_cast<std::size_t>(layer)).name);
  }
  void of_size(bool yes, const char* what) const {
    if (!yes) throw std::invalid_argument(fmt::format("dxf: {} of no size", what));
  }

  void header() {
    Box2 box = bounds(list_);
    if (box.empty()) box.add({0, 0});
    put(0, "SECTION");
    put(2, "HEADER");
    put(9, "$ACADVER");
    put(1, "AC1009");
    put(9, "$EXTMIN");
    point(10, box.low);
    put(9, "$EXTMAX");
    point(10, box.high);
    // Line patterns are in millimetres of paper; a part metres long needs them longer.
    put(9, "$LTSCALE");
    number(40, std::max(1.0, std::max(box.width(), box.height()) / 400) * scale_);
    put(0, "ENDSEC");
  }

  void table(const char* name, std::size_t entries) {
    put(0, "TABLE");
    put(2, name);
    put(70, static_cast<int>(entries));
  }

  void pattern(const char* name, const char* shown, const std::vector<double>& dashes) {
    double total = 0;
    for (const double d : dashes) total += std::abs(d);
    put(0, "LTYPE");
    put(2, name);
    put(70, 0);
    put(3, shown);
    put(72, 65);
    put(73, static_cast<int>(dashes.size()));
    number(40, total);
    for (const double d : dashes) number(49, d);
  }

  void tables() {
    put(0, "SECTION");
    put(2, "TABLES");
    table("LTYPE", 3);
    pattern("CONTINUOUS", "Solid line", {});
    pattern("HIDDEN", "Dashes", {4, -2});
    pattern("CENTER", "Long and short dashes", {12, -2, 3, -2});
    put(0, "ENDTAB");
    table("LAYER", list_.layers.size() + 1);
    layer({"0", 7, LineKind::continuous});
    for (const Layer& l : list_.layers) layer(l);
    put(0, "ENDTAB");
    table("STYLE", 1);
    put(0, "STYLE");
    put(2, "STANDARD");
    put(70, 0);
    number(40, 0);
    number(41, text_width_factor);
    number(50, 0);
    put(71, 0);
    number(42, 1);
    put(3, "txt");
    put(4, "");
    put(0, "ENDTAB");
    put(0, "ENDSEC");
  }

  void layer(const Layer& l) {
    put(0, "LAYER");
    put(2, l.name);
    put(70, 0);
    put(62, l.colour);
    put(6, line_type(l.kind));
  }

  void entity(const Line& l) {
    of_size(norm(l.to - l.from) > 0, "a line");
    begin("LINE", l.layer);
    point(10, l.from);
    point(11, l.to);
  }

  void entity(const Arc& a) {
    of_size(a.radius > 0 && a.start != a.end, "an arc");
    begin("ARC", a.layer);
    point(10, a.centre);
    number(40, scale_ * a.radius);
    number(50, a.start / degree);
    number(51, a.end / degree);
  }

  void entity(const Circle& c) {
    of_size(c.radius > 0, "a circle");
    begin("CIRCLE", c.layer);
    point(10, c.centre);
    number(40, scale_ * c.radius);
  }

  void entity(const Closed& c) {
    of_size(c.outline.size() > 1, "a closed outline");
    polyline(c.layer, 1);
    for (std::size_t i = 0; i < c.outline.size(); ++i) {
      const Vertex& v = c.outline[i];
      of_size(norm(c.outline[(i + 1) % c.outline.size()].at - v.at) > 0, "a run of a closed outline");
      begin("VERTEX", c.layer);
      point(10, v.at);
      if (v.bulge != 0) put(42, precise(v.bulge));
    }
    begin("SEQEND", c.layer);
  }

  void entity(const Path& p) {
    of_size(p.points.size() > 1, "a path");
    polyline(p.layer, 0);
    for (std::size_t i = 0; i < p.points.size(); ++i) {
      if (i > 0) of_size(norm(p.points[i] - p.points[i - 1]) > 0, "a run of a path");
      begin("VERTEX", p.layer);
      point(10, p.points[i]);
    }
    begin("SEQEND", p.layer);
  }

  void polyline(int layer, int closed) {
    begin("POLYLINE", layer);
    put(66, 1);
    point(10, {0, 0});
    put(70, closed);
  }

  // The third and fourth corner of a SOLID are changed over.
  void entity(const Filled& f) {
    for (const Box2& b : f.boxes) {
      of_size(b.width() > 0 && b.height() > 0, "a filled rectangle");
      begin("SOLID", f.layer);
      point(10, b.low);
      point(11, {b.high.x, b.low.y});
      point(12, {b.low.x, b.high.y});
      point(13, b.high);
    }
  }

  void entity(const Text& t) {
    of_size(t.height > 0, "a text");
    begin("TEXT", t.layer);
    point(10, t.at);
    number(40, scale_ * t.height);
    put(1, dxf_text(t.text));
    number(50, t.rotation / degree);
    number(41, text_width_factor);
    const int across = t.across == Across::left ? 0 : t.across == Across::centre ? 1 : 2;
    const int up = t.up == Up::baseline ? 0 : t.up == Up::middle ? 2 : 3;
    if (across == 0 && up == 0) return;
    put(72, across);
    point(11, t.at);
    put(73, up);
  }

  // A bulge is a tangent, not a length: over an arc of a metre, eight decimals
  // would leave its area short of a part in a million.
  static std::string precise(double value);

  const List2d& list_;
  double scale_;
  std::string out_;
};

std::string trimmed(std::string s) {
  while (s.back() == '0') s.pop_back();
  if (s.back() == '.') s += '0';
  return s == "-0.0" ? "0.0" : s;
}

std::string fixed(double value, int decimals) {
  if (!std::isfinite(value)) throw std::invalid_argument("dxf: a figure is not finite");
  return trimmed(fmt::format("{:.{}f}", value, decimals));
}

std::string Writer::precise(double value) { return fixed(value, 14); }

}  // namespace

std::string dxf_number(double value) { return fixed(value, 8); }

std::string dxf(const List2d& list, double scale) { return Writer(list, scale).run(); }

}  // namespace bedwright
