// At work, on its jacks: the mains as beams under bed, log and rolling head.
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "loads/loads.h"
#include "loads/log.h"
#include "loads/rail.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

constexpr int station_count = 49;

std::vector<Mm> jack_lines(const Job& job) {
  std::vector<Mm> x = job.order.jacks;
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end(), [](Mm a, Mm b) { return b - a < 1; }), x.end());
  return x;
}

// The supports, and an even grid that keeps off them.
std::vector<Mm> station_places(Mm from, Mm to, const std::vector<Mm>& supports) {
  std::vector<Mm> x = supports;
  for (int i = 0; i < station_count; ++i) {
    const Mm at = from + i * (to - from) / (station_count - 1);
    if (std::none_of(supports.begin(), supports.end(), [&](Mm s) { return std::abs(s - at) < 1; }))
      x.push_back(at);
  }
  std::sort(x.begin(), x.end());
  return x;
}

// The part of a load at `y` that the main on that side takes: a lever between the two.
double part(Side side, Mm y, Mm spacing) { return 0.5 + outward(side) * y / spacing; }

std::vector<BeamLoad> resting(const BedWeights& w, Side side, Mm spacing) {
  std::vector<BeamLoad> loads;
  for (const Weight& weight : w.weights)
    if (weight.carried != Carried::head)
      loads.push_back({weight.from, weight.to, weight.mass * gravity * part(side, weight.centre.y, spacing)});
  return loads;
}

// Both mains under every place of head and log.
class Mains {
 public:
  Mains(const Job& job, const Bed& bed, const BedWeights& w, Stand& out)
      : job_(job),
        bed_(bed),
        out_(out),
        spacing_(job.frame.main.spacing),
        bending_(bending_of(*job.catalog.section(job.frame.main.section.text))),
        lines_(jack_lines(job)),
        beam_(supports(), station_places(main_start(job), main_end(job, bed), lines_),
              steel_modulus * bending_.inertia) {
    const LogOnBunks log(job, bed);
    logs_ = log.places(stand_log_places);
    if (logs_.empty()) logs_.push_back({});  // it lies nowhere: STAND-LOG says so
    for (std::size_t s = 0; s < 2; ++s) {
      const LoadField bare = beam_.field(resting(w, both_sides[s], spacing_));
      for (const std::vector<BeamLoad>& place : logs_) {
        still_[s].push_back(bare);
        still_[s].back().add(beam_.field(place), part(both_sides[s], out.log_y, spacing_));
      }
    }
    const Eigen::Index n = stations();
    for (MainCurve* c : {&curves_[0], &curves_[1]}) {
      c->x = beam_.stations();
      for (Envelope* e : {&c->down, &c->slope, &c->moment, &c->shear})
        *e = Envelope(static_cast<std::size_t>(n));
    }
    for (std::size_t s = 0; s < 2; ++s)
      for (std::size_t j = 0; j < lines_.size(); ++j)
        out_.jacks.push_back({{Kind::jack, both_sides[s], number_of(lines_[j])},
                              lines_[j],
                              std::numeric_limits<double>::infinity(),
                              0,
                              0,
                              0,
                              0});
    const auto place = [&](Mm x) {
      return std::lower_bound(beam_.stations().begin(), beam_.stations().end(), x) - beam_.stations().begin();
    };
    track_first_ = place(-same_place);
    track_count_ = place(bed.track.total_length + same_place) - track_first_;
    for (Mm x : lines_) jack_stations_.push_back(place(x - same_place));
  }

  void run() {
    const Track& track = bed_.track;
    for (int i = 0; i < stand_head_places; ++i) {
      const Mm head = track.head_from + i * (track.head_to - track.head_from) / (stand_head_places - 1);
      const std::vector<BeamLoad> wheels = head_wheels(job_, head, job_.kit.head.mass * gravity);
      const LoadField wheel_field = beam_.field(wheels);
      for (std::size_t s = 0; s < 2; ++s)
        for (std::size_t k = 0; k < logs_.size(); ++k) {
          one(head, wheels, wheel_field, s, k);
          if (out_.tips) return;
        }
    }
    finish();
  }

 private:
  std::vector<BeamSupport> supports() const {
    std::vector<BeamSupport> all;
    for (Mm x : lines_) all.push_back({x, false});
    return all;
  }
  Eigen::Index stations() const { return static_cast<Eigen::Index>(beam_.stations().size()); }
  int number_of(Mm x) const {
    const auto& jacks = job_.order.jacks;
    for (std::size_t i = 0; i < jacks.size(); ++i)
      if (std::abs(jacks[i] - x) < 1) return static_cast<int>(i) + 1;
    throw std::logic_error("a line of jacks that no jack of the order stands on");
  }

  void one(Mm head, const std::vector<BeamLoad>& wheels, const LoadField& wheel_field, std::size_t s,
           std::size_t k) {
    const double wheel_part = part(both_sides[s], job_.kit.head.mass_y, spacing_);
    all_ = still_[s][k];
    all_.add(wheel_field, wheel_part);
    const auto state = beam_.solve(all_, touching_[s]);
    if (!state) {
      out_.tips = true;
      out_.tips_at = head;
      return;
    }
    touching_[s] = state->touching;
    beam_.bend(all_, *state, bent_);
    moving_ = wheels;
    for (BeamLoad& wheel : moving_) wheel.force *= wheel_part;
    for (const BeamLoad& wheel : moving_)
      take_moment(beam_.bending_at(wheel.from, still_[s][k], moving_, *state), wheel.from);
    take_jacks(*state, head, s);
    take(head, *state, s, k);
  }

  void take_moment(double m, Mm x) {
    if (std::abs(m) <= std::abs(out_.main_moment)) return;
    out_.main_moment = m;
    out_.main_moment_x = x;
  }

  void take_jacks(const BeamState& state, Mm head, std::size_t s) {
    for (std::size_t j = 0; j < lines_.size(); ++j) {
      JackLoad& jack = out_.jacks[s * lines_.size() + j];
      jack.least = std::min(jack.least, state.reactions[j]);
      jack.most = std::max(jack.most, state.reactions[j]);
      if (std::binary_search(state.touching.begin(), state.touching.end(), static_cast<int>(j))) continue;
      const Mm up = -beam_.down_at_support(all_, state, static_cast<int>(j));
      if (up > jack.lifts) {
        jack.lifts = up;
        jack.lifts_at = head;
      }
    }
  }

  void take(Mm head, const BeamState& state, std::size_t s, std::size_t k) {
    MainCurve& c = curves_[s];
    c.down.take(bent_.down);
    c.slope.take(bent_.slope);
    c.moment.take(bent_.moment);
    c.shear.take(bent_.shear);
    out_.slope = std::max(out_.slope, bent_.slope.lpNorm<Eigen::Infinity>());
    out_.main_shear = std::max(out_.main_shear, bent_.shear.lpNorm<Eigen::Infinity>());
    // Just beside a jack the shear differs from the mean there by half its push.
    for (int j : state.touching)
      out_.main_shear =
          std::max(out_.main_shear, std::abs(bent_.shear[jack_stations_[j]]) + state.reactions[j] / 2);
    const auto& x = beam_.stations();
    Eigen::Index at = 0;
    bent_.moment.cwiseAbs().maxCoeff(&at);
    take_moment(bent_.moment[at], x[at]);
    // Sag counts under the track alone.
    if (bent_.down.segment(track_first_, track_count_).cwiseAbs().maxCoeff(&at) <= out_.main_sag) return;
    at += track_first_;
    out_.main_sag = std::abs(bent_.down[at]);
    out_.sag_x = x[at];
    out_.head_x = head;
    worst_side_ = s;
    worst_log_ = k;
  }

  // The case to draw: head and log where a main sags most. Both mains, for their jacks.
  void finish() {
    const std::vector<BeamLoad>& log = logs_[worst_log_];
    double total = 0, first = 0;
    for (const BeamLoad& bunk : log) total += bunk.force, first += bunk.force * bunk.from;
    out_.log_position = total > 0 ? first / total : 0;
    const LoadField wheels = beam_.field(head_wheels(job_, out_.head_x, job_.kit.head.mass * gravity));
    for (std::size_t s : {1 - worst_side_, worst_side_}) {
      all_ = still_[s][worst_log_];
      all_.add(wheels, part(both_sides[s], job_.kit.head.mass_y, spacing_));
      const BeamState state = beam_.solve(all_, touching_[s]).value();
      for (std::size_t j = 0; j < lines_.size(); ++j)
        out_.jacks[s * lines_.size() + j].drawn = state.reactions[j];
      beam_.bend(all_, state, bent_);
    }
    out_.wheels_x = out_.head_x + job_.kit.head.mass_x;
    out_.side = both_sides[worst_side_];
    out_.curve = std::move(curves_[worst_side_]);
    for (const auto& [envelope, drawn] : {std::pair{&out_.curve.down, &bent_.down},
                                          {&out_.curve.slope, &bent_.slope},
                                          {&out_.curve.moment, &bent_.moment},
                                          {&out_.curve.shear, &bent_.shear}})
      envelope->drawn.assign(drawn->begin(), drawn->end());
    out_.main_stress = std::abs(out_.main_moment) / bending_.modulus;
    const Section& main = *job_.catalog.section(job_.frame.main.section.text);
    out_.web_stress = out_.main_shear / web_area(main);
  }

  const Job& job_;
  const Bed& bed_;
  Stand& out_;
  Mm spacing_;
  Bending bending_;
  std::vector<Mm> lines_;
  Beam beam_;
  std::vector<LoadField> still_[2];  // bed and log, by side and place of the log
  LoadField all_;
  std::vector<std::vector<BeamLoad>> logs_;
  std::vector<int> touching_[2];
  std::vector<BeamLoad> moving_;
  BeamCurves bent_;
  std::vector<Eigen::Index> jack_stations_;         // by jack line
  Eigen::Index track_first_ = 0, track_count_ = 0;  // stations under the track
  MainCurve curves_[2];
  std::size_t worst_side_ = 0, worst_log_ = 0;
};

// Sideways, about the feet of one row of jacks: the push of a log rolled against
// its stops, and a log's weight on the bunks' ends as it comes on.
void tip_sideways(const Job& job, const Bed& bed, const BedWeights& w, Stand& out) {
  const FrameJack& j = job.frame.jack;
  out.foot_y = job.frame.main.spacing / 2 + j.plate_thickness + j.flange_thickness + j.post_width / 2;
  const Body all = together(together(w.frame, w.track), together(w.head, w.gear));
  if (!job.order.work.log || out.log_mass <= 0) return;
  const Mm radius = job.order.work.log->diameter / 2;
  const Mm bunk_top = rail_seat(job, bed) + job.kit.bunk.standing_leg;
  const Mm ground = -job.catalog.section(job.frame.main.section.text)->depth - job.frame.axle.below -
                    job.frame.axle.tyre_diameter / 2;
  out.push = job.order.work.push * out.log_mass * gravity;
  out.push_height = bunk_top + std::min(radius, job.kit.log_stop.height) - ground;
  // Stops stand on the road side: the push is toward -y, about the feet at -foot_y.
  const double holding =
      all.mass * gravity * (all.centre.y + out.foot_y) + out.log_mass * gravity * (out.log_y + out.foot_y);
  if (out.push > 0) out.push_factor = holding / (out.push * out.push_height);
  // Coming on from the kerb side its weight bears on the bunks' ends.
  const Mm over = job.kit.gauge / 2 - out.foot_y;
  if (over > 0) out.roll_on_factor = all.mass * (out.foot_y - all.centre.y) / (out.log_mass * over);
}

}  // namespace

Stand stand_loads(const Job& job, const Bed& bed, const BedWeights& weights) {
  Stand out;
  const LogOnBunks log(job, bed);
  out.log_lies = log.lies();
  out.log_mass = log.mass();
  out.log_y = log.y();
  out.log_bunks = log.most_bunks();
  out.bunk_load = log.heaviest_bunk();
  out.sag_limit = job.order.work.sag_limit;
  out.main_allowed = frame_yield(job.frame) / job.order.work.safety_factor;
  out.web_allowed = web_shear * out.main_allowed;
  out.kit_allowed = kit_yield / job.order.work.safety_factor;
  const RailBending rails = bend_rails(job, bed, out);
  out.rail_sag = rails.sag;
  out.rail_sag_x = rails.sag_x;
  out.rail_moment = rails.moment;
  out.rail_stress = rails.stress;
  out.bunk_stress = rails.bunk_stress;
  out.tab_load = rails.tab_load;
  tip_sideways(job, bed, weights, out);
  out.jacks_enough = jack_lines(job).size() >= 2;
  if (out.jacks_enough) Mains(job, bed, weights, out).run();
  out.sag = out.main_sag + out.rail_sag;
  return out;
}

}  // namespace bedwright
