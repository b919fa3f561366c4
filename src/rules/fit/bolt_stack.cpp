// BOLT-SHORT, BOLT-LONG, BOLT-THREAD, WASHER-FLAT: whether each bolt's length
// suits what it passes through.
#include <fmt/format.h>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// Common practice, no published source: washers and nuts even out one degree. From
// memory: structural bolting asks for a bevelled washer from 1:20 (2.9 degrees). The
// tapered flanges this is about slope 9.5 degrees.
constexpr Radians steepest_seat = 1 * degree;

template <class Use>
void for_each_placed(const Scene& scene, Use use) {
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i)
    if (scene.bed.bolts[i].in_place) use(scene.bed.bolts[i], scene.stacks[i]);
}

Vec3 nut_face(const Bolt& bolt, const Stack& stack) {
  return bolt.seat + (stack.plies + stack.nut_washers) * bolt.direction;
}

}  // namespace

void check_bolt_short(const Scene& scene, std::vector<Finding>& findings) {
  for_each_placed(scene, [&](const Bolt& bolt, const Stack& stack) {
    const Mm shortest = stack.past_nut - bolt.size.tolerance(bolt.length).minus;
    const double threads = shortest / bolt.size.pitch;
    const double limit = scene.limits.threads_past_nut;
    if (shortest >= limit * bolt.size.pitch - same_place) return;
    Finding f = finding_of("BOLT-SHORT", Severity::stop, bolt, nut_face(bolt, stack));
    f.measured = threads;
    f.limit = limit;
    f.margin = threads - limit;
    f.unit = "threads";
    const Figures& say = scene.figures;
    f.message = fmt::format(
        "the {} bolt passes {} of plies, washers and nut and at its shortest {}; {:g} full thread{} past the "
        "nut "
        "{} asked",
        bolt_length_text(bolt.size, bolt.length), say.say(stack.grip + bolt.size.nut_height),
        shortest < 0 ? fmt::format("ends {} inside it", say.say(-shortest))
                     : fmt::format("stands {} ({:.1f} threads) past the nut", say.say(shortest), threads),
        limit, limit == 1 ? "" : "s", limit == 1 ? "is" : "are");
    suggest_length(scene, bolt, false, f);
    findings.push_back(std::move(f));
  });
}

void check_bolt_long(const Scene& scene, std::vector<Finding>& findings) {
  for_each_placed(scene, [&](const Bolt& bolt, const Stack& stack) {
    const Mm longest = stack.past_nut + bolt.size.tolerance(bolt.length).plus;
    if (longest <= scene.limits.most_past_nut + same_place) return;
    // It holds all the same, so this is a warning; what it might meet is TIP's to stop.
    Finding f = finding_of("BOLT-LONG", Severity::warn, bolt, nut_face(bolt, stack));
    f.measured = longest;
    f.limit = scene.limits.most_past_nut;
    f.margin = f.limit - f.measured;
    f.message = fmt::format("the {} bolt stands up to {} past its nut; at most {} is allowed",
                            bolt_length_text(bolt.size, bolt.length), scene.figures.say(longest),
                            scene.figures.say(f.limit));
    suggest_length(scene, bolt, true, f);
    findings.push_back(std::move(f));
  });
}

void check_bolt_thread(const Scene& scene, std::vector<Finding>& findings) {
  for_each_placed(scene, [&](const Bolt& bolt, const Stack& stack) {
    const Mm plain = bolt.length - bolt.size.thread_length;
    if (plain <= 0 || plain <= stack.grip + same_place) return;
    Finding f = finding_of("BOLT-THREAD", Severity::stop, bolt, nut_face(bolt, stack));
    f.measured = plain;
    f.limit = stack.grip;
    f.margin = f.limit - f.measured;
    f.message = fmt::format(
        "the {} bolt has {} of plain shank but only {} under its nut, so the nut runs out of thread before "
        "it seats",
        bolt_length_text(bolt.size, bolt.length), scene.figures.say(plain), scene.figures.say(stack.grip));
    suggest_length(scene, bolt, true, f);
    f.remedy +=
        fmt::format("; or put {} more of washers under the nut", scene.figures.say(plain - stack.grip));
    findings.push_back(std::move(f));
  });
}

void check_washer_flat(const Scene& scene, std::vector<Finding>& findings) {
  for_each_placed(scene, [&](const Bolt& bolt, const Stack& stack) {
    if (bolt.plies.empty()) return;
    const auto look = [&](Radians slope, const char* what, Vec3 at) {
      if (std::abs(slope) <= steepest_seat) return;
      Finding f = finding_of("WASHER-FLAT", Severity::stop, bolt, at);
      f.measured = std::abs(slope) / degree;
      f.limit = steepest_seat / degree;
      f.margin = f.limit - f.measured;
      f.unit = "degrees";
      f.message = fmt::format("the {} seats on a face that slopes {:.1f} degrees; at most {:g} is allowed",
                              what, f.measured, f.limit);
      f.remedy = fmt::format("put a bevel washer of {:.1f} degrees under the {}", f.measured, what);
      findings.push_back(std::move(f));
    };
    look(bolt.plies.front().slope, "head", bolt.seat);
    look(bolt.plies.back().slope, "nut", bolt.seat + stack.plies * bolt.direction);
  });
}

}  // namespace bedwright
