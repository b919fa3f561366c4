// One main after the other as a beam on its jacks, under every place of head and log.
#include "loads/mains.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "loads/log.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

constexpr int station_count = 49;

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
  Mains(const Job& job, const Bed& bed, const BedWeights& w, const std::vector<Mm>& sunk, Stand& out)
      : job_(job),
        bed_(bed),
        out_(out),
        spacing_(job.frame.main.spacing),
        bending_(bending_of(*job.catalog.section(job.frame.main.section.text))),
        lines_(jack_lines(job)),
        sunk_(sunk),
        beam_(supports(), station_places(main_start(job), main_end(job, bed), lines_),
              steel_modulus * bending_.inertia) {
    const LogOnBunks log(job, bed);
    logs_ = log.places(stand_log_places);
    if (logs_.empty()) logs_.push_back({});  // it lies nowhere: STAND-LOG says so
    std::vector<std::vector<BeamLoad>> landing = log.places(stand_log_places, job.order.work.landing);
    for (std::size_t s = 0; s < 2; ++s) {
      const LoadField bare = beam_.field(resting(w, both_sides[s], spacing_));
      const auto with = [&](const std::vector<BeamLoad>& place) {
        LoadField all = bare;
        all.add(beam_.field(place), part(both_sides[s], out.log_y, spacing_));
        return all;
      };
      for (const std::vector<BeamLoad>& place : logs_) still_[s].push_back(with(place));
      for (const std::vector<BeamLoad>& place : landing) landing_[s].push_back(with(place));
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
    for (int i = 0; i < stand_head_places; ++i) {
      const Head head = head_at(i);
      const bool lands = i % stand_landing_step == 0;
      // What bends a main changes little from one place of the head to the next: at rest each
      // way the log lies is tried at every other of them, and at both ends.
      const bool end = i == 0 || i == stand_head_places - 1;
      for (std::size_t s = 0; s < 2; ++s) {
        for (std::size_t k = 0; k < still_[s].size() && !out_.tips; ++k)
          if (end || still_[s].size() == 1 || (static_cast<std::size_t>(i) + k) % 2 == 0) at_rest(head, s, k);
        for (std::size_t k = 0; lands && k < landing_[s].size() && !out_.tips; ++k) as_it_lands(head, s, k);
      }
      if (out_.tips) return;
    }
    finish();
  }

 private:
  std::vector<BeamSupport> supports() const {
    std::vector<BeamSupport> all;
    for (std::size_t i = 0; i < lines_.size(); ++i)
      all.push_back({lines_[i], false, sunk_.empty() ? 0 : sunk_[i]});
    return all;
  }
  Eigen::Index stations() const { return static_cast<Eigen::Index>(beam_.stations().size()); }
  int number_of(Mm x) const {
    const auto& jacks = job_.order.jacks;
    for (std::size_t i = 0; i < jacks.size(); ++i)
      if (std::abs(jacks[i] - x) < 1) return static_cast<int>(i) + 1;
    throw std::logic_error("a line of jacks that no jack of the order stands on");
  }

  struct Head {
    Mm x = 0;
    std::vector<BeamLoad> wheels;
    LoadField field;
  };
  Head head_at(int i) const {
    const Track& track = bed_.track;
    Head head{track.head_from + i * (track.head_to - track.head_from) / (stand_head_places - 1), {}, {}};
    head.wheels = head_wheels(job_, head.x, job_.kit.head.mass * gravity);
    head.field = beam_.field(head.wheels);
    return head;
  }

  // Bends the main under bed, log and head; nothing where it tips.
  std::optional<BeamState> bent(const Head& head, const LoadField& still, std::size_t s) {
    const double wheel_part = part(both_sides[s], job_.kit.head.mass_y, spacing_);
    all_ = still;
    all_.add(head.field, wheel_part);
    auto state = beam_.solve(all_, touching_[s]);
    if (!state) {
      out_.tips = true;
      out_.tips_at = head.x;
      return state;
    }
    touching_[s] = state->touching;
    beam_.bend(all_, *state, bent_);
    return state;
  }

  // Sag, slope and how the jacks keep their load.
  void at_rest(const Head& head, std::size_t s, std::size_t k) {
    const auto state = bent(head, still_[s][k], s);
    if (!state) return;
    take_strength(head, *state, still_[s][k], s);
    take_lifts(*state, head.x, s);
    take_sag(head.x, s, k);
  }

  // Stresses and what the jacks push.
  void as_it_lands(const Head& head, std::size_t s, std::size_t k) {
    const auto state = bent(head, landing_[s][k], s);
    if (state) take_strength(head, *state, landing_[s][k], s);
  }

  void take_moment(double m, Mm x) {
    if (std::abs(m) <= std::abs(out_.main_moment)) return;
    out_.main_moment = m;
    out_.main_moment_x = x;
  }

  void take_lifts(const BeamState& state, Mm head, std::size_t s) {
    for (std::size_t j = 0; j < lines_.size(); ++j) {
      JackLoad& jack = out_.jacks[s * lines_.size() + j];
      jack.least = std::min(jack.least, state.reactions[j]);
      if (std::binary_search(state.touching.begin(), state.touching.end(), static_cast<int>(j))) continue;
      const Mm up = -beam_.down_at_support(all_, state, static_cast<int>(j));
      if (up > jack.lifts) {
        jack.lifts = up;
        jack.lifts_at = head;
      }
    }
  }

  void take_strength(const Head& head, const BeamState& state, const LoadField& still, std::size_t s) {
    const double wheel_part = part(both_sides[s], job_.kit.head.mass_y, spacing_);
    moving_ = head.wheels;
    for (BeamLoad& wheel : moving_) wheel.force *= wheel_part;
    for (const BeamLoad& wheel : moving_)
      take_moment(beam_.bending_at(wheel.from, still, moving_, state), wheel.from);
    MainCurve& c = curves_[s];
    c.moment.take(bent_.moment);
    c.shear.take(bent_.shear);
    out_.main_shear = std::max(out_.main_shear, bent_.shear.lpNorm<Eigen::Infinity>());
    // Just beside a jack the shear differs from the mean there by half its push.
    for (int j : state.touching)
      out_.main_shear =
          std::max(out_.main_shear, std::abs(bent_.shear[jack_stations_[j]]) + state.reactions[j] / 2);
    Eigen::Index at = 0;
    bent_.moment.cwiseAbs().maxCoeff(&at);
    take_moment(bent_.moment[at], beam_.stations()[at]);
    for (std::size_t j = 0; j < lines_.size(); ++j) {
      JackLoad& jack = out_.jacks[s * lines_.size() + j];
      jack.most = std::max(jack.most, state.reactions[j]);
    }
  }

  // Sag counts under the track alone.
  void take_sag(Mm head, std::size_t s, std::size_t k) {
    MainCurve& c = curves_[s];
    c.down.take(bent_.down);
    c.slope.take(bent_.slope);
    out_.slope = std::max(out_.slope, bent_.slope.lpNorm<Eigen::Infinity>());
    Eigen::Index at = 0;
    if (bent_.down.segment(track_first_, track_count_).cwiseAbs().maxCoeff(&at) <= out_.main_sag) return;
    at += track_first_;
    out_.main_sag = std::abs(bent_.down[at]);
    out_.sag_x = beam_.stations()[at];
    out_.head_x = head;
    worst_side_ = s;
    worst_log_ = k;
  }

  // The case to draw: head and log where a main sags most. Both mains, for their jacks.
  void finish() {
    const std::vector<BeamLoad>& log = logs_[worst_log_];
    double total = 0, first = 0;
    for (const BeamLoad& bunk : log) {
      total += bunk.force, first += bunk.force * bunk.from;
      out_.log_drawn.push_back({bunk.from, bunk.force});
    }
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
  std::vector<Mm> lines_, sunk_;
  Beam beam_;
  std::vector<LoadField> still_[2], landing_[2];  // bed and log, by side and place of the log
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

}  // namespace

std::vector<Mm> jack_lines(const Job& job) {
  std::vector<Mm> x = job.order.jacks;
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end(), [](Mm a, Mm b) { return b - a < 1; }), x.end());
  return x;
}

void bend_mains(const Job& job, const Bed& bed, const BedWeights& weights, const std::vector<Mm>& sunk,
                Stand& out) {
  Mains(job, bed, weights, sunk, out).run();
}

}  // namespace bedwright
