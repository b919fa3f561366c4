// Draws pages with Cairo and collects the bytes.
#include "formats/pdf.h"

#include <cairo-ft.h>
#include <cairo-pdf.h>
#include <fmt/format.h>
#include <ft2build.h>

#include <memory>
#include <numbers>
#include <stdexcept>
#include FT_FREETYPE_H

#include "formats/font.h"

namespace bedwright {
namespace {

constexpr double point = 72 / inch;  // PDF points to a millimetre

void require(cairo_status_t status) {
  if (status != CAIRO_STATUS_SUCCESS)
    throw std::runtime_error(fmt::format("the PDF cannot be made: {}", cairo_status_to_string(status)));
}

// The font, with what its letters measure. Kept as long as anything drawn with it.
class Font {
 public:
  explicit Font(const std::string& file) {
    if (FT_Init_FreeType(&library_) != 0) throw std::runtime_error("the font library does not start");
    if (FT_New_Face(library_, file.c_str(), 0, &face_) != 0) {
      FT_Done_FreeType(library_);
      throw std::runtime_error(fmt::format("the font {} cannot be read", file));
    }
    if (FT_Load_Char(face_, 'H', FT_LOAD_NO_SCALE) == 0)
      capital_ = static_cast<double>(face_->glyph->metrics.height) / face_->units_per_EM;
    cairo_ = cairo_ft_font_face_create_for_ft_face(face_, FT_LOAD_NO_HINTING);
  }
  ~Font() {
    cairo_font_face_destroy(cairo_);
    FT_Done_Face(face_);
    FT_Done_FreeType(library_);
  }
  Font(const Font&) = delete;
  Font& operator=(const Font&) = delete;

  cairo_font_face_t* face() const { return cairo_; }
  double capital() const { return capital_; }  // height of a capital for a size of 1

 private:
  FT_Library library_ = nullptr;
  FT_Face face_ = nullptr;
  cairo_font_face_t* cairo_ = nullptr;
  double capital_ = 0.7;
};

class Painter {
 public:
  Painter(cairo_t* c, const Font& font, const std::vector<Layer>& layers)
      : c_(c), font_(font), layers_(layers) {}

  void operator()(const Line& l) {
    pen(l.layer);
    cairo_move_to(c_, l.from.x, l.from.y);
    cairo_line_to(c_, l.to.x, l.to.y);
    cairo_stroke(c_);
  }
  void operator()(const Arc& a) {
    pen(a.layer);
    cairo_new_sub_path(c_);
    cairo_arc(c_, a.centre.x, a.centre.y, a.radius, a.start, a.end);
    cairo_stroke(c_);
  }
  void operator()(const Circle& a) {
    pen(a.layer);
    cairo_new_sub_path(c_);
    cairo_arc(c_, a.centre.x, a.centre.y, a.radius, 0, 2 * std::numbers::pi);
    cairo_close_path(c_);
    cairo_stroke(c_);
  }
  void operator()(const Closed& a) {
    pen(a.layer);
    for (std::size_t i = 0; i < a.outline.size(); ++i) {
      const Vertex& v = a.outline[i];
      const Vec2 next = a.outline[(i + 1) % a.outline.size()].at;
      if (i == 0) cairo_move_to(c_, v.at.x, v.at.y);
      if (v.bulge == 0) {
        cairo_line_to(c_, next.x, next.y);
        continue;
      }
      const RunArc arc = run_arc(v.at, next, v.bulge);
      const auto turn = arc.sweep > 0 ? cairo_arc : cairo_arc_negative;
      turn(c_, arc.centre.x, arc.centre.y, arc.radius, arc.start, arc.start + arc.sweep);
    }
    cairo_close_path(c_);
    cairo_stroke(c_);
  }
  void operator()(const Path& p) {
    pen(p.layer);
    for (std::size_t i = 0; i < p.points.size(); ++i)
      (i == 0 ? cairo_move_to : cairo_line_to)(c_, p.points[i].x, p.points[i].y);
    cairo_stroke(c_);
  }
  void operator()(const Filled& f) {
    colour(f.layer);
    for (const Box2& b : f.boxes) cairo_rectangle(c_, b.low.x, b.low.y, b.width(), b.height());
    cairo_fill(c_);
  }
  void operator()(const Text& t) {
    colour(t.layer);
    cairo_save(c_);
    cairo_translate(c_, t.at.x, t.at.y);
    cairo_rotate(c_, t.rotation);
    const double size = t.height / font_.capital();
    cairo_text_extents_t extents;
    set_size(size, 1);
    cairo_text_extents(c_, t.text.c_str(), &extents);
    const Mm room = text_width(t.text, t.height);
    const double narrow = extents.x_advance > room ? room / extents.x_advance : 1;
    set_size(size, narrow);
    const Mm width = extents.x_advance * narrow;
    cairo_move_to(c_,
                  t.across == Across::left     ? 0
                  : t.across == Across::centre ? -width / 2
                                               : -width,
                  t.up == Up::baseline ? 0
                  : t.up == Up::middle ? -t.height / 2
                                       : -t.height);
    cairo_show_text(c_, t.text.c_str());
    cairo_restore(c_);
  }

 private:
  void set_size(double size, double narrow) {
    cairo_matrix_t upright;  // y is up here; letters must not hang
    cairo_matrix_init(&upright, size * narrow, 0, 0, -size, 0, 0);
    cairo_set_font_matrix(c_, &upright);
  }
  const Layer& layer(int index) const { return layers_.at(static_cast<std::size_t>(index)); }
  void colour(int index) {
    const Rgb rgb = printed_colour(layer(index).colour);
    cairo_set_source_rgb(c_, rgb.red, rgb.green, rgb.blue);
  }
  void pen(int index) {
    colour(index);
    const std::vector<double> pattern = dashes(layer(index).kind);
    cairo_set_dash(c_, pattern.data(), static_cast<int>(pattern.size()), 0);
    cairo_set_line_width(c_, layer(index).width);
  }

  cairo_t* c_;
  const Font& font_;
  const std::vector<Layer>& layers_;
};

cairo_status_t append(void* closure, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;
using Context = std::unique_ptr<cairo_t, decltype(&cairo_destroy)>;

void describe(cairo_surface_t* surface, const PdfInfo& info) {
  const std::string date = info.date + "T00:00:00Z";
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, info.title.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR, "bedwright");
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE, date.c_str());
  cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE, date.c_str());
}

void draw(cairo_t* c, const Page& page, const Font& font) {
  const cairo_matrix_t to_points{point, 0, 0, -point, 0, page.height * point};
  cairo_set_matrix(c, &to_points);
  cairo_set_line_cap(c, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join(c, CAIRO_LINE_JOIN_ROUND);
  cairo_set_font_face(c, font.face());
  Painter painter(c, font, page.list.layers);
  for (const Entity& entity : page.list.entities) std::visit(painter, entity);
  cairo_show_page(c);
}

}  // namespace

std::string pages_pdf(const std::vector<Page>& pages, const PdfInfo& info) {
  std::string bytes;
  if (const std::string fault = font_fault(); !fault.empty()) throw std::runtime_error(fault);
  const Font font(*font_file());
  const Page first = pages.empty() ? Page{} : pages.front();
  const Surface surface(
      cairo_pdf_surface_create_for_stream(append, &bytes, first.width * point, first.height * point),
      cairo_surface_destroy);
  require(cairo_surface_status(surface.get()));
  describe(surface.get(), info);
  {
    const Context context(cairo_create(surface.get()), cairo_destroy);
    int number = 0;
    for (const Page& page : pages) {
      cairo_pdf_surface_set_size(surface.get(), page.width * point, page.height * point);
      ++number;
      if (!page.title.empty())
        cairo_pdf_surface_add_outline(surface.get(), CAIRO_PDF_OUTLINE_ROOT, page.title.c_str(),
                                      fmt::format("page={}", number).c_str(), CAIRO_PDF_OUTLINE_FLAG_OPEN);
      draw(context.get(), page, font);
    }
    require(cairo_status(context.get()));
  }
  cairo_surface_finish(surface.get());
  require(cairo_surface_status(surface.get()));
  return bytes;
}

}  // namespace bedwright
