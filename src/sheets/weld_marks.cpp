#include "sheets/weld_marks.h"

#include <fmt/format.h>

#include "export/figures.h"

namespace bedwright {
namespace {

bool says(const Weld& weld, const char* words) { return weld.note.starts_with(words); }

}  // namespace

Mm weld_run(const Weld& weld) { return says(weld, "both") ? weld.length / 2 : weld.length; }

WeldMark weld_mark(const Weld& weld, int alike, const Heading& heading) {
  WeldMark mark;
  mark.size = size_figure(weld.leg, heading);
  mark.around = says(weld, "around");
  mark.both_sides = says(weld, "both sides");
  if (!mark.around) mark.length = tape_figure(weld_run(weld), heading);
  mark.tail = weld.note;
  if (alike > 1) mark.tail += fmt::format(", {} such joints", alike);
  return mark;
}

}  // namespace bedwright
