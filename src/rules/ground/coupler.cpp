// COUPLER-FIT: the coupler is one for this tongue, and lies on it.
#include <fmt/format.h>

#include <cmath>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// Of the plate on the tongue, along it: common practice, no published source.
constexpr Mm least_on_tongue = 2 * inch;
// Of a flange under the plate, across: room for the fillet's root and as much again.
constexpr Mm least_lap = inch / 2;
// The smallest ball in use, 1-7/8 in: the classes of SAE J684, from memory.
constexpr Mm smallest_ball = 1.875 * inch;
// The ball's middle ahead of the tongue's steel: half of a 2 in ball.
constexpr Mm ball_room = inch;
// A body may hang so far under the tongue: common practice, no published source.
constexpr Mm most_below = inch;

// The right-hand channel, seen from above.
struct Channel {
  Mm front = 0;           // its square cut
  Mm web = 0, slope = 0;  // outer face of its web from the centre line there, and outward for each mm back
  Mm across = 0;          // its flange, across the bed
  Mm top = 0, bottom = 0;
  Mm web_at(Mm x) const { return web + (x - front) * slope; }
};

Channel channel_of(const Bed& bed) {
  const int tongue = bed.item({Kind::tongue, Side::right});
  const Placement& at = bed.items[tongue].placement;
  const Section& s = std::get<Member>(bed.part_of(tongue).form).section;
  return {at.origin.x,
          std::abs(at.origin.y),
          std::abs(at.x_axis.y) / at.x_axis.x,
          s.flange / at.x_axis.x,
          at.origin.z + s.depth / 2,
          at.origin.z - s.depth / 2};
}

struct Judge {
  const Scene& scene;
  const Item& coupler;
  std::vector<Finding>& findings;

  // Less than asked; nothing when it is not.
  Finding* less(Mm measured, Mm limit) const {
    if (measured >= limit - same_place) return nullptr;
    findings.push_back(finding_of("COUPLER-FIT", Severity::stop, coupler, coupler.placement.origin));
    Finding& f = findings.back();
    f.subjects.emplace_back(Identity{Kind::tongue, Side::right});
    f.measured = measured;
    f.limit = limit;
    f.margin = measured - limit;
    return &f;
  }
};

}  // namespace

void check_coupler_fit(const Scene& scene, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const auto item = bed.find_item({Kind::coupler});
  if (!item || !scene.input.job) return;
  const FrameCoupler& c = scene.input.job->frame.coupler;
  const Figures& say = scene.figures;
  const Channel channel = channel_of(bed);
  const Judge judge{scene, bed.items[*item], findings};
  const Mm rear = bounds(bed, *item).high.x, on_tongue = rear - channel.front;
  const FrameWelds& welds = scene.input.job->frame.welds;
  const Mm leg = welds.of(welds.coupler);

  if (Finding* f = judge.less(on_tongue, least_on_tongue)) {
    f->message = on_tongue < 0 ? fmt::format("the coupler ends {} ahead of the tongue", say.say(-on_tongue))
                               : fmt::format("the coupler lies {} on the tongue; {} is asked",
                                             say.say(on_tongue), say.say(least_on_tongue));
    const Mm more = say.round_up(least_on_tongue - on_tongue);
    f->remedy = fmt::format("a coupler {} longer, or the ball that much nearer the tongue", say.say(more));
    f->changes.push_back({"frame.coupler.length", say.set(c.length + more)});
    if (c.ball_ahead - more >= ball_room)
      f->changes.push_back({"frame.coupler.ball_ahead", say.set(c.ball_ahead - more)});
    return;  // there is no plate on the tongue to ask more of
  }

  // The plate's edges on the flanges, at the front cut and at its rear end.
  const auto half_at = [&](Mm x) { return c.width / 2 + (x - channel.front) * std::tan(c.angle); };
  Mm ledge = std::numeric_limits<Mm>::infinity(), lap = ledge;
  for (const Mm x : {channel.front, rear}) {
    const Mm in_from_web = channel.web_at(x) - half_at(x);
    ledge = std::min(ledge, in_from_web);
    lap = std::min(lap, channel.across - in_from_web);
  }
  // With its edges along the tongue's, to a degree, it lies everywhere as at the front cut.
  const Mm at_front = channel.web - c.width / 2;
  const double turned = std::round(std::atan(channel.slope) / degree);
  const Change tongues_angle{"frame.coupler.angle", fmt::format("{:.0f} deg", turned)};
  if (Finding* f = judge.less(ledge, leg)) {
    f->message = ledge < 0
                     ? fmt::format("the coupler stands {} out past the tongue on each side", say.say(-ledge))
                     : fmt::format(
                           "the coupler's plate leaves a ledge of {} on the tongue's flange for "
                           "a fillet of {}",
                           say.say(ledge), say.say(leg));
    const Mm width = std::floor((c.width - 2 * (leg - ledge)) / say.step() + 1e-6) * say.step();
    f->remedy = width > 0 ? fmt::format("a coupler {} wide at the tongue's front cut", say.say(width))
                          : fmt::format("a coupler whose plate is at the tongue's {:.0f} degrees", turned);
    if (width > 0) f->changes.push_back({"frame.coupler.width", say.set(width)});
    if (at_front >= leg + 1) f->changes.push_back(tongues_angle);
  }
  if (Finding* f = judge.less(lap, least_lap)) {
    f->message = lap < 0 ? fmt::format("the coupler's plate misses the tongue's flanges by {}", say.say(-lap))
                         : fmt::format(
                               "the coupler's plate lies on {} of each of the tongue's flanges; {} "
                               "is asked",
                               say.say(lap), say.say(least_lap));
    const Mm width = c.width + 2 * say.round_up(least_lap - lap);
    const bool by_angle = channel.across - at_front >= least_lap + 1;
    f->remedy = by_angle ? fmt::format("a coupler whose plate is at the tongue's {:.0f} degrees", turned)
                         : fmt::format("a coupler {} wide at the tongue's front cut", say.say(width));
    if (by_angle) f->changes.push_back(tongues_angle);
    f->changes.push_back({"frame.coupler.width", say.set(width)});
  }
  if (Finding* f = judge.less(channel.top + c.plate_thickness - c.height, channel.bottom - most_below)) {
    const Mm most = channel.top - channel.bottom + c.plate_thickness + most_below;
    f->measured = -c.height;
    f->limit = -most;
    f->message = fmt::format("the coupler's body is {} high and hangs more than {} under the tongue",
                             say.say(c.height), say.say(most_below));
    f->remedy = fmt::format("a coupler at most {} high", say.say(most));
    f->changes.push_back({"frame.coupler.height", say.set_at_most(most)});
  }
  if (Finding* f = judge.less(std::min(c.width, c.height), smallest_ball)) {
    f->message = fmt::format("a coupler of {} by {} holds no ball: the smallest is {}", say.say(c.width),
                             say.say(c.height), say.say(smallest_ball));
    f->remedy = fmt::format("a coupler at least {} wide and high", say.say(smallest_ball));
    const bool width = c.width < c.height;
    f->changes.push_back({width ? "frame.coupler.width" : "frame.coupler.height", say.set(2 * inch)});
  }
  if (Finding* f = judge.less(c.ball_ahead, ball_room)) {
    f->message = fmt::format("the ball's middle is {} ahead of the tongue, and half a ball is {}",
                             say.say(c.ball_ahead), say.say(ball_room));
    f->remedy = fmt::format("a coupler with its ball {} ahead of the tongue", say.say(ball_room));
    f->changes.push_back({"frame.coupler.ball_ahead", say.set_at_least(ball_room)});
  }
}

}  // namespace bedwright
