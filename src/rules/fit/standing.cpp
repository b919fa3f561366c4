// STANDING: nothing of a frame that stands is made again, and what the order bolts to it
// lies where the frame has its holes.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "rules/fit/standing_work.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// How many holes the frame's file asks to be drilled in each main.
int asked_in_place(const Scene& scene) {
  const Job& job = *scene.input.job;
  constexpr int of_a_jack = 4;
  return of_a_jack *
         static_cast<int>(std::count_if(job.order.jacks.begin(), job.order.jacks.end(), [&](Mm x) {
           return is_new_place(job.frame.jack, x + job.frame.main.front_overhang);
         }));
}

// The layout leaves nothing of a standing frame to be made; were it to, good steel would
// be cut a second time.
void made_again(const Scene& scene, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  for (std::size_t p = 0; p < bed.parts.size(); ++p) {
    const Part& part = bed.parts[p];
    const int quantity = bed.count(static_cast<int>(p));
    if (quantity == 0) continue;
    int holes = 0;
    int in_place = 0;
    const auto count = [&](const Hole& hole) {
      if (hole.process == Process::on_site)
        ++in_place;
      else if (hole.process != Process::as_bought)
        ++holes;
    };
    if (const Plate* plate = std::get_if<Plate>(&part.form))
      std::for_each(plate->holes.begin(), plate->holes.end(), count);
    if (const Member* member = std::get_if<Member>(&part.form))
      for (const FaceHole& hole : member->holes) count(hole.hole);
    // Four for each jack that the frame's file has bolted up at a new place, in the mains alone.
    holes += std::abs(in_place - (part.id.kind == Kind::main ? asked_in_place(scene) : 0));
    const bool made = part.origin == Origin::made;
    // What the frame's file asks for: its tabs.to_add and jack.to_add.
    const bool asked =
        part.id.kind == Kind::tab || part.id.kind == Kind::tab_pad || part.id.kind == Kind::jack_plate;
    if (made && asked && part.id.of > 0) continue;
    if (!made && (part.origin != Origin::standing || holes == 0)) continue;
    Finding f = finding_of("STANDING", Severity::stop, part, {});
    f.measured = made ? quantity : holes;
    f.margin = -f.measured;
    f.unit = made ? "pieces" : "holes";
    f.message =
        made ? fmt::format("the frame stands, and {} of {} would be cut for it again", quantity, name(part))
             : fmt::format("the frame stands, and {} holes would be made in its {} again", holes, name(part));
    f.remedy = fmt::format("do not build from this bed: take {} off its cut and drill lists", name(part));
    findings.push_back(std::move(f));
  }
}

std::string places(const Figures& say, const std::vector<Mm>& all) {
  std::string text;
  for (const Mm x : all) text += (text.empty() ? "" : ", ") + say.say(x);
  return text;
}

// One thing the order puts at `at`, where the frame has holes only at `there`, all from the
// mains' front end.
struct Placed {
  Kind kind = Kind::none;
  const char *what = "", *is = "", *it = "";  // "jacks", "are", "them"
  std::string key;                            // of the frame's file
  std::vector<Mm> at, there;
  bool listed = true;  // in the order as a place; else worked out from other keys
};

void not_measured(const Scene& scene, const Placed& p, std::vector<Finding>& findings) {
  const Figures& say = scene.figures;
  Finding f = finding_of("STANDING", Severity::stop, Identity{p.kind}, {});
  f.measured = static_cast<double>(p.at.size());
  f.margin = -f.measured;
  f.unit = "not measured";
  f.message = fmt::format(
      "the frame stands and its file does not say where its {} {}; the order has {} at {} from the mains' "
      "front end",
      p.what, p.is, p.it, places(say, p.at));
  f.remedy = fmt::format(
      "measure from the mains' front end to each of the {} places and write them down as {} in "
      "the frame's file",
      p.at.size(), p.key);
  findings.push_back(std::move(f));
}

void compare(const Scene& scene, const Placed& p, const Change& as_it_stands,
             const std::vector<Change>& or_moved, Mm limit, std::vector<Finding>& findings) {
  if (p.at.empty()) return;
  if (p.there.empty()) return not_measured(scene, p, findings);
  const auto off = [&](Mm x) {
    Mm least = std::abs(p.there.front() - x);
    for (const Mm there : p.there) least = std::min(least, std::abs(there - x));
    return least;
  };
  const Mm worst = *std::max_element(p.at.begin(), p.at.end(), [&](Mm a, Mm b) { return off(a) < off(b); });
  if (off(worst) <= limit + same_place) return;
  const Figures& say = scene.figures;
  Finding f = finding_of("STANDING", Severity::stop, Identity{p.kind},
                         {worst - scene.input.job->frame.main.front_overhang, 0, 0});
  f.measured = off(worst);
  f.limit = limit;
  f.margin = limit - f.measured;
  f.message = fmt::format(
      "the order has the {} at {} from the mains' front end, and the frame stands with {} at {}: {} off, and "
      "nothing is drilled or welded there again",
      p.what, places(say, p.at), p.it, places(say, p.there), say.say(f.measured));
  f.remedy = fmt::format("{}: {} behind the track's front end in the order, as the frame has {}", p.what,
                         as_it_stands.value, p.it);
  if (p.listed) f.changes.push_back(as_it_stands);
  for (const Change& moved : or_moved) {
    f.remedy += fmt::format("; or bolt them up where the order has them, holes drilled in place: {} {}",
                            moved.key, moved.value);
    f.changes.push_back(moved);
  }
  findings.push_back(std::move(f));
}

// The jacks' places as the order has them, the pairs that stand elsewhere unbolted and moved
// there, front to rear, and further pairs bought.
std::vector<Change> jacks_moved(const Figures& say, const FrameJack& jack, const std::vector<Mm>& wanted,
                                Mm limit) {
  const auto without = [&](const std::vector<Mm>& places, const std::vector<Mm>& others) {
    std::vector<Mm> left;
    for (const Mm x : places)
      if (std::none_of(others.begin(), others.end(), [&](Mm y) { return std::abs(x - y) <= limit; }))
        left.push_back(x);
    std::sort(left.begin(), left.end());
    return left;
  };
  const std::vector<Mm> there = places_of_jacks(jack), from = without(there, wanted),
                        to = without(wanted, there);
  // One change clears the finding: pairs are moved, or pairs are added, not some of each.
  if (to.empty() || !jack.to_move.empty() || !jack.to_add.empty()) return {};
  std::string moves, adds;
  for (std::size_t i = 0; i < to.size(); ++i) {
    if (i < from.size())
      moves += fmt::format("{}{{from: {}, to: {}}}", i ? ", " : "", say.set(from[i]), say.set(to[i]));
    adds += fmt::format("{}{}", i ? ", " : "", say.set(to[i]));
  }
  if (to.size() <= from.size()) return {{"frame.jack.to_move", "[" + moves + "]"}};
  return {{"frame.jack.to_add", "[" + adds + "]"}};
}

// A track longer than its mains: by how much it runs past them, and by how much it may,
// its outermost holes over the outermost place for a tab.
void told_overhang(const Scene& scene, std::vector<Finding>& findings) {
  const FrameFile& frame = scene.input.job->frame;
  if (!frame.main.length) return;
  const Figures& say = scene.figures;
  const Mm end = scene.bed.track.total_length, start = -frame.main.front_overhang;
  Mm first = end, last = 0;
  for (const Bolt& bolt : scene.bed.bolts) {
    if (bolt.id.kind != Kind::track_bolt) continue;
    first = std::min(first, bolt.seat.x);
    last = std::max(last, bolt.seat.x);
  }
  if (first > last) return;
  const Mm room = room_on_main(frame).from;
  const auto tell = [&](const char* which, Mm x, Mm over, Mm may) {
    if (over <= same_place) return;
    Finding f = finding_of("STANDING", Severity::note, Identity{Kind::track}, {x, 0, 0});
    f.measured = over;
    f.limit = may;
    f.margin = may - over;
    f.message = fmt::format(
        "the track runs {} past the {} ends of the mains, which stand; by where its outermost holes are it "
        "may "
        "run {} past",
        say.say(over), which, say.say(may));
    f.remedy = over > may
                   ? fmt::format("a track {} shorter, or a longer frame", say.say(say.round_up(over - may)))
                   : fmt::format("nothing, so long as nobody stands or loads on the {} that hang free",
                                 say.say(over));
    findings.push_back(std::move(f));
  };
  tell("front", 0, start, first - room);
  tell("rear", end, end - start - *frame.main.length, end - last - room);
}

}  // namespace

void check_standing(const Scene& scene, std::vector<Finding>& findings) {
  const Job* job = scene.input.job;
  if (!job || !stands(job->frame)) return;
  made_again(scene, findings);
  told_overhang(scene, findings);
  const Figures& say = scene.figures;
  const FrameFile& frame = job->frame;
  const Mm ahead = frame.main.front_overhang, limit = job->order.order.tape / 2;
  const Order& order = job->order;
  Placed jacks{Kind::jacks, "jacks", "are", "them", "jack.existing", {}, places_of_jacks(frame.jack)};
  jacks.listed = order.jacks_from_rear.empty() && order.jacks_between == 0;
  for (const Mm x : order.jacks) jacks.at.push_back(x + ahead);
  std::string list;
  for (const Mm x : jacks.there) list += (list.empty() ? "" : ", ") + say.set(x - ahead);
  compare(scene, jacks, {"jacks", "[" + list + "]"}, jacks_moved(say, frame.jack, jacks.at, limit), limit,
          findings);
  Placed axle{Kind::axle, "axle", "is", "it", "axle.existing", {order.axle.position + ahead}, {}};
  axle.listed = order.axle.fraction <= 0;
  if (frame.axle.existing) axle.there = {*frame.axle.existing};
  compare(scene, axle, {"axle.position", frame.axle.existing ? say.set(*frame.axle.existing - ahead) : ""},
          {}, limit, findings);
}

}  // namespace bedwright
