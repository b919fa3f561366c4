// Draws a strip, and moves labels apart that would meet.
#include "sheets/drill/drill_strip.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <numbers>

#include "units/steps.h"

namespace bedwright {
namespace {

constexpr Radians quarter_turn = std::numbers::pi / 2;
// Text boxes reach 1.2 heights; labels side by side are set this far apart.
constexpr double label_pitch = 1.5;

Mm up_of(const FaceView& view, Mm across) { return view.edge_up ? view.width - across : across; }

// The face from outside, straight-sided, counter-clockwise.
std::vector<Vec2> face_polygon(const Member& m, const FaceView& view) {
  const Mm front = view.mitred ? view.width * std::tan(m.start_mitre) : 0;
  const Mm rear = view.mitred ? view.width * std::tan(m.end_mitre) : 0;
  const Mm near = up_of(view, 0), far = up_of(view, view.width);
  std::vector<Vec2> p{{0, near}, {m.length, near}, {m.length + rear, far}, {front, far}};
  if (view.edge_up) std::reverse(p.begin(), p.end());
  return p;
}

// Part of the convex polygon on the side of x where sign * (x - limit) >= 0.
std::vector<Vec2> clipped(const std::vector<Vec2>& polygon, Mm limit, double sign) {
  std::vector<Vec2> out;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
    const double da = sign * (a.x - limit), db = sign * (b.x - limit);
    if (da >= 0) out.push_back(a);
    if ((da > 0 && db < 0) || (da < 0 && db > 0)) out.push_back({limit, a.y + da / (da - db) * (b.y - a.y)});
  }
  return out;
}

std::vector<Mm> hidden_edges(const Section& s, Face face) {
  if (is_closed(s)) return {s.web, (face == Face::web ? s.depth : s.flange) - s.web};
  if (face != Face::web) return {s.web};
  return {s.flange_thickness, s.depth - s.flange_thickness};
}

// What a hole's number must keep clear of.
struct Taken {
  std::vector<Box2> boxes;
  std::vector<std::array<Vec2, 2>> lines;
  bool free(const Box2& box) const {
    return std::none_of(boxes.begin(), boxes.end(), [&](const Box2& b) { return b.overlaps(box); }) &&
           std::none_of(lines.begin(), lines.end(), [&](const auto& l) { return meets(l[0], l[1], box); });
  }
  bool free(Vec2 from, Vec2 to, const Box2& own) const {
    return std::none_of(boxes.begin(), boxes.end(),
                        [&](const Box2& b) { return b.low != own.low && meets(from, to, b); });
  }
};

struct HoleShown {
  Vec2 at;
  Box2 box;
  std::string label;
  int number = 0;
};

class Drawer {
 public:
  Drawer(const Member& m, const DrillRows& rows, Face face, const std::vector<Mm>& cuts, std::size_t number,
         const StripLook& look)
      : m_(m),
        view_(face_view(m.section, face, look.upright)),
        cuts_(cuts),
        number_(number),
        look_(look),
        h_(look.text) {
    List2d& l = strip_.list;
    part_ = l.layer({"PART", 7, LineKind::continuous, 0.5});
    holes_ = l.layer({"HOLES", 1, LineKind::continuous, 0.35});
    hidden_ = l.layer({"HIDDEN", 8, LineKind::hidden, 0.18});
    centre_ = l.layer({"CENTRE", 4, LineKind::centre, 0.18});
    dimension_ = l.layer({"DIMENSIONS", 3, LineKind::continuous, 0.18});
    text_ = l.layer({"TEXT", 7, LineKind::continuous, 0.25});
    for (const DrillRow& r : rows.rows) {
      if (r.hole.face == face && in_strip(r.along)) show(r);
    }
  }

  Strip run() {
    outline();
    across_dimensions();
    along_dimensions();
    ends();
    for (const HoleShown& hole : shown_) label(hole);
    title();
    return std::move(strip_);
  }

 private:
  Mm from() const { return cuts_[number_]; }
  Mm to() const { return cuts_[number_ + 1]; }
  bool first() const { return number_ == 0; }
  bool last() const { return number_ + 2 == cuts_.size(); }
  // A hole on a cut belongs to the strip behind it.
  bool in_strip(Mm x) const { return (first() || x >= from()) && (last() || x < to()); }
  Mm at(Mm along) const { return along - from(); }

  void line(int layer, Vec2 a, Vec2 b) {
    if (norm(b - a) < same_place) return;
    strip_.list.add(Line{layer, a, b});
    taken_.lines.push_back({a, b});
  }

  Box2 text(Vec2 at, const std::string& words, Across across, Up up, Radians rotation) {
    const Text t{text_, at, h_, words, across, up, rotation};
    strip_.list.add(t);
    taken_.boxes.push_back(text_box(t));
    return taken_.boxes.back();
  }

  std::string figure(Mm distance) const {
    return std::abs(distance) < same_place ? "0" : look_.heading.figures().tape_figure(distance);
  }

  void show(const DrillRow& r) {
    const Hole& h = r.hole.hole;
    const Vec2 at_view{at(r.along), up_of(view_, r.across)};
    Entity entity = Circle{holes_, at_view, h.diameter / 2};
    if (h.slotted()) {
      entity = Closed{holes_, hole_outline(at_view, h.diameter, h.length, turned_in_view(r.hole))};
    }
    shown_.push_back({at_view, bounds(entity), fmt::format("{}{}", r.number, r.letter), r.number});
    taken_.boxes.push_back(shown_.back().box.grown(0.15 * h_));
    strip_.list.add(std::move(entity));
  }

  void outline() {
    const std::vector<Vec2> piece = clipped(clipped(face_polygon(m_, view_), from(), 1), to(), -1);
    for (std::size_t i = 0; i < piece.size(); ++i) {
      const Vec2 a = piece[i], b = piece[(i + 1) % piece.size()];
      const auto on = [&](Mm x) { return std::abs(a.x - x) < same_place && std::abs(b.x - x) < same_place; };
      const bool broken = (!first() && on(from())) || (!last() && on(to()));
      line(broken ? centre_ : part_, {at(a.x), a.y}, {at(b.x), b.y});
    }
    for (const Mm edge : hidden_edges(m_.section, view_.face)) {
      const Mm front = view_.mitred ? edge * std::tan(m_.start_mitre) : 0;
      const Mm rear = m_.length + (view_.mitred ? edge * std::tan(m_.end_mitre) : 0);
      const Mm y = up_of(view_, edge);
      const Mm a = std::max(front, from()), b = std::min(rear, to());
      if (a < b) line(hidden_, {at(a), y}, {at(b), y});
    }
  }

  // Each row of holes: a centre line to its last hole, its distance at the left;
  // and the edge the distances are from, as 0.
  void across_dimensions() {
    const Mm none = -std::numeric_limits<double>::infinity();
    std::vector<std::pair<Mm, Mm>> rows{{up_of(view_, 0), none}};  // up, furthest hole
    for (const HoleShown& s : shown_) {
      const auto same = std::find_if(rows.begin(), rows.end(),
                                     [&](const auto& r) { return std::abs(r.first - s.at.y) < same_place; });
      if (same == rows.end()) {
        rows.emplace_back(s.at.y, s.box.high.x);
      } else {
        same->second = std::max(same->second, s.box.high.x);
      }
    }
    std::sort(rows.begin(), rows.end());
    std::vector<Mm> ups;
    for (const auto& r : rows) ups.push_back(r.first);
    const std::vector<Mm> places = spread(ups, label_pitch * h_);
    const Mm edge = -0.5 * h_;
    const Mm bend = edge - (places == ups ? 0.5 : 1.5) * h_;
    left_ = bend - 0.3 * h_;
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (rows[i].second != none) line(centre_, {edge, ups[i]}, {rows[i].second + 0.4 * h_, ups[i]});
      line(dimension_, {edge, ups[i]}, {bend, places[i]});
      const Mm across = view_.edge_up ? view_.width - ups[i] : ups[i];
      const Box2 box = text({bend - 0.3 * h_, places[i]}, figure(across), Across::right, Up::middle, 0);
      left_ = std::min(left_, box.low.x);
    }
  }

  // Each place along: a line from its lowest hole up past the edge, then to its label.
  void along_dimensions() {
    std::vector<std::pair<Mm, Mm>> places;  // x, lowest hole
    const auto note = [&](Mm x, Mm up) {
      const auto same = std::find_if(places.begin(), places.end(),
                                     [&](const auto& p) { return std::abs(p.first - x) < same_place; });
      if (same == places.end()) {
        places.emplace_back(x, up);
      } else {
        same->second = std::min(same->second, up);
      }
    };
    if (first()) note(at(0), view_.width);
    for (const HoleShown& s : shown_) note(s.at.x, s.at.y);
    if (last()) note(at(m_.length), view_.width);
    std::sort(places.begin(), places.end());
    std::vector<Mm> xs;
    for (const auto& p : places) xs.push_back(p.first);
    const std::vector<Mm> labels = spread(xs, label_pitch * h_);
    const Mm bend = view_.width + 0.8 * h_, start = bend + (labels == xs ? 0.8 : 1.8) * h_;
    for (std::size_t i = 0; i < xs.size(); ++i) {
      line(dimension_, {xs[i], places[i].second}, {xs[i], bend});
      line(dimension_, {xs[i], bend}, {labels[i], start});
      text({labels[i], start + 0.3 * h_}, figure(xs[i] + from()), Across::left, Up::middle, quarter_turn);
    }
  }

  void ends() {
    const Mm middle = view_.width / 2;
    const std::string front = first() ? words_of(look_.first_end) : fmt::format("MATCH {}", number_);
    const std::string rear = last() ? words_opposite(look_.first_end) : fmt::format("MATCH {}", number_ + 1);
    const Box2 box = text({left_ - 0.6 * h_, middle}, front, Across::centre, Up::baseline, quarter_turn);
    left_ = box.low.x;
    const Box2 drawn = bounds(strip_.list);
    text({drawn.high.x + 1.6 * h_, middle}, rear, Across::centre, Up::baseline, quarter_turn);
  }

  // Tries places round the hole, near ones first; a leader says whose number it is.
  void label(const HoleShown& hole) {
    constexpr std::array<double, 9> rings{0.35, 0.9, 1.6, 2.5, 3.6, 5, 7, 9.5, 12};
    constexpr std::array<Vec2, 16> sides{{{1, 1},
                                          {-1, 1},
                                          {1, -1},
                                          {-1, -1},
                                          {0, -1},
                                          {1, 0.5},
                                          {1, -0.5},
                                          {-1, 0.5},
                                          {-1, -0.5},
                                          {0.5, -1},
                                          {-0.5, -1},
                                          {0.5, 1},
                                          {-0.5, 1},
                                          {1, 0},
                                          {-1, 0},
                                          {0, 1}}};
    const Vec2 half_hole = 0.5 * (hole.box.high - hole.box.low);
    const Vec2 half_text{text_width(hole.label, h_) / 2, 0.6 * h_};
    for (const double ring : rings) {
      for (const Vec2 side : sides) {
        const Vec2 centre = hole.at + Vec2{side.x * (half_hole.x + ring * h_ + half_text.x),
                                           side.y * (half_hole.y + ring * h_ + half_text.y)};
        Box2 box;
        box.add(centre - half_text);
        box.add(centre + half_text);
        if (!taken_.free(box.grown(0.1 * h_))) continue;
        const Vec2 unit_side = (1 / norm(side)) * side;
        const Vec2 start = hole.at + Vec2{unit_side.x * half_hole.x, unit_side.y * half_hole.y};
        const Vec2 end = centre - Vec2{side.x * half_text.x, side.y * half_text.y};
        if (!taken_.free(start, end, hole.box.grown(0.15 * h_))) continue;
        line(dimension_, start, end);
        // The middle of capitals and descent together.
        text(centre + Vec2{0, 0.1 * h_}, hole.label, Across::centre, Up::middle, 0);
        return;
      }
    }
    strip_.unlabelled.push_back(hole.number);
  }

  void title() {
    const std::string which =
        cuts_.size() > 2 ? fmt::format(", strip {} of {}", number_ + 1, cuts_.size() - 1) : std::string();
    text({left_, bounds(strip_.list).high.y + 0.8 * h_},
         fmt::format("{}, {}{}. Along: all from {} (0). Across: from {}.", view_.name, view_.seen, which,
                     words_of(look_.first_end), view_.edge),
         Across::left, Up::baseline, 0);
  }

  const Member& m_;
  FaceView view_;
  const std::vector<Mm>& cuts_;
  std::size_t number_;
  const StripLook& look_;
  Mm h_;
  Strip strip_;
  Taken taken_;
  std::vector<HoleShown> shown_;
  int part_ = 0, holes_ = 0, hidden_ = 0, centre_ = 0, dimension_ = 0, text_ = 0;
  Mm left_ = 0;  // of what is drawn so far
};

}  // namespace

Box2 face_bounds(const Member& member, Face face) {
  Box2 box;
  for (const Vec2 p : face_polygon(member, face_view(member.section, face, true))) box.add(p);
  return box;
}

std::vector<Mm> strip_cuts(const Member& member, const DrillRows& rows, Face face, int strips, Mm clear) {
  const Box2 box = face_bounds(member, face);
  const Mm length = box.width() / strips;
  const auto space = [&](Mm x) {  // to the nearest hole's edge
    Mm least = std::numeric_limits<double>::infinity();
    for (const DrillRow& r : rows.rows) {
      if (r.hole.face == face) least = std::min(least, std::abs(r.along - x) - r.hole.hole.length / 2);
    }
    return least;
  };
  std::vector<Mm> cuts{box.low.x};
  for (int i = 1; i < strips; ++i) {
    const Mm ideal = box.low.x + i * length;
    Mm best = ideal;
    // Out from the ideal place in steps of 1 % of a strip, up to a fifth of one.
    for (int k = 1; k <= 40 && space(best) < clear; ++k) {
      const Mm x = ideal - steps_out(k) * length / 100;
      if (space(x) > space(best)) best = x;
    }
    cuts.push_back(best);
  }
  cuts.push_back(box.high.x);
  return cuts;
}

Strip drill_strip(const Member& member, const DrillRows& rows, Face face, const std::vector<Mm>& cuts,
                  std::size_t number, const StripLook& look) {
  return Drawer(member, rows, face, cuts, number, look).run();
}

// Least squares under the gaps: subtract i * pitch, pool neighbours that fall out
// of order into their mean, add i * pitch back.
std::vector<Mm> spread(const std::vector<Mm>& places, Mm pitch) {
  struct Pool {
    double sum;
    std::size_t count;
    double mean() const { return sum / static_cast<double>(count); }
  };
  const bool apart = std::adjacent_find(places.begin(), places.end(),
                                        [&](Mm a, Mm b) { return b - a < pitch; }) == places.end();
  if (apart) return places;
  std::vector<Pool> pools;
  for (std::size_t i = 0; i < places.size(); ++i) {
    pools.push_back({places[i] - static_cast<double>(i) * pitch, 1});
    while (pools.size() > 1 && pools[pools.size() - 2].mean() > pools.back().mean()) {
      pools[pools.size() - 2].sum += pools.back().sum;
      pools[pools.size() - 2].count += pools.back().count;
      pools.pop_back();
    }
  }
  std::vector<Mm> out;
  for (const Pool& p : pools) {
    for (std::size_t i = 0; i < p.count; ++i)
      out.push_back(p.mean() + static_cast<double>(out.size()) * pitch);
  }
  return out;
}

}  // namespace bedwright
