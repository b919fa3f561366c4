// A part's form, size and origin in words.
#include "sheets/part_words.h"

#include <fmt/format.h>

#include <stdexcept>

#include "bed/names.h"
#include "draw/list2d.h"

namespace bedwright {
namespace {

struct FormText {
  const Figures& figures;
  std::pair<std::string, std::string> operator()(const Plate& p) const {
    const Vec2 size = plate_size(p);
    return {fmt::format("plate {}", figures.size_length(p.thickness)),
            fmt::format("{} x {}", figures.size_length(size.x), figures.size_length(size.y))};
  }
  std::pair<std::string, std::string> operator()(const Member& m) const {
    return {m.section.name, figures.tape_length(m.length)};
  }
  std::pair<std::string, std::string> operator()(const Bought&) const { return {"bought item", ""}; }
  std::pair<std::string, std::string> operator()(const Hardware& h) const {
    return {fmt::format("{} {}", word(h.kind), h.size.name),
            h.kind == HardwareKind::bolt ? bolt_length_text(h.size, h.length) : ""};
  }
};

}  // namespace

Vec2 plate_size(const Plate& plate) {
  const Box2 box = bounds(Entity(Closed{0, plate.outline}));
  return box.high - box.low;
}

const char* origin_name(Origin origin) {
  switch (origin) {
    case Origin::made:
      return "made";
    case Origin::bought:
      return "bought";
    case Origin::standing:
      return "stands";
    case Origin::kit:
      return "kit";
  }
  throw std::logic_error("a part of unknown origin");
}

std::pair<std::string, std::string> part_form(const Part& part, const Figures& figures) {
  return std::visit(FormText{figures}, part.form);
}

const char* back_word(const Bed& bed, int member) {
  return is_closed(std::get<Member>(bed.part_of(member).form).section) ? "outer side" : "web back";
}

}  // namespace bedwright
