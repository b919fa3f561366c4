// What a weld symbol says, from the weld and its line.
#include "sheets/frame/weld_marks.h"

#include <fmt/format.h>

#include "bed/names.h"

namespace bedwright {
namespace {

// Along two edges, ends or sides alike, half the length on each.
bool is_two_runs(WeldLine line) {
  switch (line) {
    case WeldLine::web_sides:
    case WeldLine::tube_sides:
    case WeldLine::plate_ends:
    case WeldLine::flange_edges:
    case WeldLine::across_flange:
    case WeldLine::pad_edges:
    case WeldLine::clip_ends:
      return true;
    default:
      return false;
  }
}

}  // namespace

Mm weld_run(const Weld& weld) { return is_two_runs(weld.line) ? weld.length / 2 : weld.length; }

WeldMark weld_mark(const Weld& weld, int alike, const Figures& figures) {
  WeldMark mark;
  mark.size = figures.size_figure(weld.leg);
  mark.both_sides = weld.line == WeldLine::web_sides;
  mark.length = figures.tape_figure(weld_run(weld));
  mark.tail = words_of(weld.line);
  if (alike > 1) mark.tail += fmt::format(", {} such joints", alike);
  return mark;
}

}  // namespace bedwright
