// Texts on a drawing that find a free place by themselves.
#pragma once

#include <vector>

#include "draw/list2d.h"

namespace bedwright {

// Adds lines and texts to a list and remembers where they lie. A text is put at
// the first of the places offered where it meets no text and crosses no line; when
// none is free, at the first that meets no text.
class Labels {
 public:
  Labels(List2d& list, int text_layer) : list_(list), text_layer_(text_layer) {}

  void line(int layer, Vec2 from, Vec2 to);
  void path(int layer, const std::vector<Vec2>& points);
  void box(int layer, Vec2 low, Vec2 high);
  void circle(int layer, Vec2 centre, Mm radius);
  // An arrow's shaft and head, its tip at `to`.
  void arrow(int layer, Vec2 from, Vec2 to);

  // Where it stands whatever else is there.
  void fixed(Text text);
  // At `at`, or beside it in steps: first down (up when `up`), then to the sides.
  // Kept within `space`.
  void near(Text text, const Box2& space, bool up = false);

 private:
  bool meets_text(const Box2& box) const;
  bool meets_line(const Box2& box) const;

  List2d& list_;
  int text_layer_;
  std::vector<Box2> texts_;
  std::vector<std::pair<Vec2, Vec2>> lines_;
};

}  // namespace bedwright
