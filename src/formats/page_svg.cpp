// Writes each entity of a page as an SVG element.
#include "formats/page_svg.h"

#include <fmt/format.h>

#include <cmath>
#include <iterator>
#include <numbers>

namespace bedwright {
namespace {

// Letters of common sans fonts stand 0.72 of their size high.
constexpr double capital = 0.72;

std::string number(double value) {
  std::string text = fmt::format("{:.3f}", value);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '&')
      out += "&amp;";
    else if (c == '<')
      out += "&lt;";
    else if (c == '>')
      out += "&gt;";
    else
      out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
  }
  return out;
}

std::string hex(Rgb c) {
  const auto byte = [](double v) { return static_cast<int>(std::lround(v * 255)); };
  return fmt::format("#{:02x}{:02x}{:02x}", byte(c.red), byte(c.green), byte(c.blue));
}

class Writer {
 public:
  Writer(std::string& out, const Page& page) : out_(out), page_(page) {}

  void operator()(const Line& l) { path(l.layer, fmt::format("M{}L{}", at(l.from), at(l.to))); }
  void operator()(const Arc& a) {
    Radians sweep = a.end - a.start;
    while (sweep < 0) sweep += 2 * std::numbers::pi;
    path(a.layer,
         fmt::format("M{}", at(on(a.centre, a.radius, a.start))) + arc(a.centre, a.radius, a.start, sweep));
  }
  void operator()(const Circle& c) {
    add("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" {}/>\n", number(c.centre.x), number(page_.height - c.centre.y),
        number(c.radius), pen(c.layer));
  }
  void operator()(const Closed& c) {
    if (c.outline.empty()) return;
    std::string d = "M" + at(c.outline.front().at);
    for (std::size_t i = 0; i < c.outline.size(); ++i) {
      const Vertex& v = c.outline[i];
      const Vec2 next = c.outline[(i + 1) % c.outline.size()].at;
      if (v.bulge == 0) {
        d += "L" + at(next);
      } else {
        const RunArc a = run_arc(v.at, next, v.bulge);
        d += arc(a.centre, a.radius, a.start, a.sweep);
      }
    }
    path(c.layer, d + "Z");
  }
  void operator()(const Path& p) {
    std::string d;
    for (const Vec2 q : p.points) d += (d.empty() ? "M" : "L") + at(q);
    path(p.layer, d);
  }
  void operator()(const Filled& f) {
    std::string d;
    for (const Box2& b : f.boxes)
      d +=
          fmt::format("M{}h{}v{}h{}z", at(b.low), number(b.width()), number(-b.height()), number(-b.width()));
    add("<path fill=\"{}\" stroke=\"none\" d=\"{}\"/>\n", hex(printed_colour(layer(f.layer).colour)), d);
  }
  void operator()(const Text& t) {
    const char* anchor = t.across == Across::left ? "start" : t.across == Across::centre ? "middle" : "end";
    const Mm down = t.up == Up::baseline ? 0 : t.up == Up::middle ? t.height / 2 : t.height;
    const std::string turn = t.rotation == 0 ? "" : fmt::format(" rotate({})", number(-t.rotation / degree));
    add("<text transform=\"translate({}){}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\" "
        "fill=\"{}\">{}</text>\n",
        at(t.at), turn, number(down), number(t.height / capital), anchor,
        hex(printed_colour(layer(t.layer).colour)), escaped(t.text));
  }

 private:
  template <class... A>
  void add(fmt::format_string<A...> text, A&&... values) {
    fmt::format_to(std::back_inserter(out_), text, std::forward<A>(values)...);
  }
  const Layer& layer(int index) const { return page_.list.layers.at(static_cast<std::size_t>(index)); }
  std::string at(Vec2 p) const { return number(p.x) + " " + number(page_.height - p.y); }
  static Vec2 on(Vec2 centre, Mm radius, Radians angle) {
    return {centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)};
  }
  // In two halves, because one arc command cannot tell a whole turn from none.
  std::string arc(Vec2 centre, Mm radius, Radians start, Radians sweep) const {
    std::string d;
    for (const double part : {0.5, 1.0})
      d += fmt::format("A{0} {0} 0 0 {1} {2}", number(radius), sweep > 0 ? 0 : 1,
                       at(on(centre, radius, start + part * sweep)));
    return d;
  }
  std::string pen(int index) const {
    const Layer& l = layer(index);
    std::string dash;
    for (const double length : dashes(l.kind)) dash += (dash.empty() ? "" : " ") + number(length);
    return fmt::format("stroke=\"{}\" stroke-width=\"{}\"{}", hex(printed_colour(l.colour)), number(l.width),
                       dash.empty() ? "" : fmt::format(" stroke-dasharray=\"{}\"", dash));
  }
  void path(int index, const std::string& d) { add("<path {} d=\"{}\"/>\n", pen(index), d); }

  std::string& out_;
  const Page& page_;
};

}  // namespace

std::string page_svg(const Page& page) {
  std::string out = fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{0}mm\" height=\"{1}mm\" "
      "viewBox=\"0 0 {0} {1}\" "
      "font-family=\"osifont, sans-serif\">\n<title>{2}</title>\n<rect width=\"{0}\" height=\"{1}\" "
      "fill=\"white\"/>\n"
      "<g fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n",
      number(page.width), number(page.height), escaped(page.title));
  Writer writer(out, page);
  for (const Entity& entity : page.list.entities) std::visit(writer, entity);
  return out + "</g>\n</svg>\n";
}

}  // namespace bedwright
