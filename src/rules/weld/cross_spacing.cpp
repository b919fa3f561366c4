// CROSS-SPACING: whether cross members stand as close as the frame's file asks.
#include <fmt/format.h>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A web across the frame: its place along the bed, and whose it is.
struct Web {
  Mm x = 0;
  int item = -1;
};

std::vector<Web> webs(const Bed& bed) {
  std::vector<Web> all;
  for (const Kind kind : {Kind::front_member, Kind::cross_member, Kind::rear_member})
    for (const int item : bed.items_of(kind)) all.push_back({bed.items[item].placement.origin.x, item});
  std::stable_sort(all.begin(), all.end(), [](const Web& p, const Web& q) { return p.x < q.x; });
  return all;
}

void not_measured(const Scene& scene, std::vector<Finding>& findings) {
  const FrameFile& frame = scene.input.job->frame;
  if (!stands(frame) || !frame.cross_member.existing.empty()) return;
  const std::vector<int> members = scene.bed.items_of(Kind::cross_member);
  if (members.empty()) return;
  const Figures& say = scene.figures;
  const Mm from = scene.bed.items[members.front()].placement.origin.x;
  Finding f = finding_of("CROSS-SPACING", Severity::warn, scene.bed.items[members.front()], {from, 0, 0});
  f.measured = 0;
  f.limit = static_cast<double>(members.size());
  f.margin = -f.limit;
  f.unit = "measured";
  f.message = fmt::format(
      "the frame stands and its file does not say where its cross members are; {} are taken, evenly, the "
      "first at {}, and whether jacks and axle clear the real ones is not known",
      members.size(), say.say(from));
  f.remedy = fmt::format(
      "measure from the mains' front end to the rear face of each of the {} webs, and list them as "
      "cross_member.existing",
      members.size());
  findings.push_back(std::move(f));
}

}  // namespace

void check_cross_spacing(const Scene& scene, std::vector<Finding>& findings) {
  const Job* job = scene.input.job;
  if (!job) return;
  const FrameFile& frame = job->frame;
  // What stands was built so, and is told; what is still to be made is not made so.
  const bool standing = stands(frame);
  const Mm most = frame.cross_member.max_spacing;
  const std::vector<Web> all = webs(scene.bed);
  const Figures& say = scene.figures;
  Mm widest = 0;
  for (std::size_t i = 1; i < all.size(); ++i) widest = std::max(widest, all[i].x - all[i - 1].x);
  for (std::size_t i = 1; i < all.size(); ++i) {
    const Mm apart = all[i].x - all[i - 1].x;
    if (apart <= most + same_place) continue;
    Finding f = finding_of("CROSS-SPACING", standing ? Severity::warn : Severity::stop,
                           scene.bed.items[all[i - 1].item], {all[i - 1].x, 0, 0});
    f.subjects.push_back(scene.bed.items[all[i].item]);
    f.measured = apart;
    f.limit = most;
    f.margin = most - apart;
    f.message = fmt::format("{} and {} stand {} apart, and the frame's file asks for {} at most",
                            f.subjects[0].name, f.subjects[1].name, say.say(apart), say.say(most));
    const std::string between = say.say((all[i].x + all[i - 1].x) / 2);
    if (standing) {
      f.remedy = fmt::format("weld in another, its web at {}", between);
    } else if (!frame.cross_member.existing.empty()) {
      f.remedy = fmt::format("list another between them, its web at {}, or let cross members stand {} apart",
                             between, say.say(say.round_up(widest)));
      f.changes.push_back({"frame.cross_member.max_spacing", say.set(say.round_up(widest))});
    } else {
      f.message += "; the jacks between leave a cross member no place nearer";
      f.remedy = fmt::format("jacks further apart there, or let cross members stand {} apart",
                             say.say(say.round_up(widest)));
      f.changes.push_back({"frame.cross_member.max_spacing", say.set(say.round_up(widest))});
    }
    findings.push_back(std::move(f));
  }
  not_measured(scene, findings);
}

}  // namespace bedwright
