// A small order with all its files, invented for these tests, and a folder of
// its own to put them in.
#pragma once

#include <fmt/format.h>
#include <stdlib.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

#include "params/job.h"

namespace bedwright::samples {

inline const std::string order = R"(# one bed
order:
  number: A-17
  customer: Hollow Creek
  date: 2024-02-29
kit: kit.yaml
frame: frame.yaml
catalog: [catalog.yaml]
track:
  rail_length: 84 in
  bunk_pitch: 21 in
  extension_count: 1
  clamps:
    - bunk: 2
    - bunk: 5
  log_stops: [2, 5]
axle: {position: 130 in}
jacks: [18 in, 222 in]
)";

inline const std::string kit = R"(name: Otter 30
gauge: 34 in
rail:
  flat_leg: 3 in
  standing_leg: 3 in
  thickness: 1/4 in
  root_radius: 5/16 in
  length_tolerance: 1/16 in
  hole_tolerance: 1/32 in
  base_sections: 2
mounting:
  hole: {bolt: 1/2 in, diameter: 9/16 in, slot: 1 in}
  slot_along: length
  line: 1-3/4 in
  end_offset: 4 in
  max_pitch: 40 in
bunk:
  flat_leg: 2 in
  standing_leg: 2 in
  thickness: 1/4 in
  end_clearance: 1/4 in
  hole: {bolt: 3/8 in, diameter: 7/16 in}
  line: 1-1/2 in
  outer_set: 3 in
  inner_set: 12 in
gusset:
  hole: {bolt: 3/8 in, diameter: 7/16 in}
  length: 10 in
  height: 1-1/2 in
  thickness: 1/4 in
  bottom: 1 in
  bolts: [1-1/2 in, 4 in]
track_stop:
  hole: {bolt: 3/8 in, diameter: 7/16 in}
  from_end: 2 in
  line: 1-3/4 in
  foot_length: 2 in
  foot_width: 2 in
  foot_thickness: 1/4 in
  face_thickness: 1/4 in
  height: 4 in
  mass: 2 lb
log_stop: {from_centre: 12 in, width: 2 in, thickness: 2 in, height: 9 in, mass: 5 lb}
clamp:
  travel_from: 3 in
  travel_to: 14 in
  base_width: 3 in
  base_length: 2 in
  base_height: 2 in
  arm_width: 1 in
  arm_thickness: 1 in
  arm_height: 8 in
  lean_in: 20 deg
  mass: 6 lb
head:
  lock_offset: 20 in
  mass: 420 lb
  mass_z: 14 in
  boxes:
    - {name: carriage, x_from: -14 in, x_to: 14 in, y_from: -19 in, y_to: 19 in, z_from: 4 in, z_to: 40 in}
box:
  - {bolt: 1/2 in, length: 1-1/2 in, quantity: 24}
)";

inline const std::string frame = R"(name: Plain six inch
grade: A36
main: {section: C6, spacing: 34 in}
cross_member: {section: C4, max_spacing: 30 in}
front_member: {section: C4}
rear_member: {section: C4}
tongue: {section: C4, length: 48 in, angle: 25 deg, back: 20 in}
tabs:
  style: clip
  length: 3 in
  hole_diameter: 9/16 in
  slot_length: 1 in
  weld_leg: 1/4 in
  clip: {section: L3, standoff: 1/2 in}
corner_gusset: {leg: 6 in, thickness: 1/4 in, corner_cut: 1/2 in}
jack:
  hole: {bolt: 1/2 in, diameter: 9/16 in}
  bolt_x: 4 in
  bolt_z: 3 in
  plate_length: 6 in
  plate_height: 5 in
  plate_thickness: 3/8 in
  flange_thickness: 1/4 in
  post_width: 2-1/2 in
  post_top: 12 in
  post_bottom: -14 in
  mass: 22 lb
  rating: 2000 lb
tongue_jack:
  hole: {bolt: 3/8 in, diameter: 7/16 in}
  bolt_circle: 4 in
  centre_hole: 2-3/8 in
  behind_front: 12 in
  plate_length: 10 in
  plate_thickness: 1/4 in
  flange_thickness: 1/4 in
  tube_diameter: 2-1/4 in
  above: 14 in
  below: 10 in
  mass: 15 lb
coupler: {length: 10 in, width: 3 in, height: 3 in, ball_ahead: 2 in, mass: 9 lb, rating: 3500 lb}
axle:
  below: 3 in
  tube_diameter: 2-3/8 in
  spring_length: 25 in
  spring_width: 1-3/4 in
  tyre_diameter: 26 in
  tyre_width: 8 in
  tyre_inside: 56 in
  bump: 3 in
  mass: 150 lb
  wheel_mass: 45 lb
  axle_rating: 3500 lb
  tyre_rating: 1760 lb
  count: 1
)";

inline const std::string half_inch_bolt = R"(  - name: 1/2 in
    source: invented
    diameter: 1/2 in
    threads_per_inch: 13
    head_flats: 3/4 in
    head_height: 5/16 in
    nut_flats: 3/4 in
    nut_height: 7/16 in
    flat: {inside: 17/32 in, outside: 1-1/16 in, thickness: 0.095 in}
    lock: {inside: 0.51 in, outside: 0.87 in, thickness: 1/8 in}
    wrench: 3/4 in
    standard_hole: 9/16 in
    oversize_hole: 5/8 in
    edge_minimum: 3/4 in
    thread_length: 1-1/4 in
    length_plus: 0 in
    length_minus: 0.04 in
    lengths: [1 in, 1-1/2 in, 2 in]
    lengths_source: invented
)";

inline const std::string three_eighths_bolt = R"(  - name: 3/8 in
    source: invented
    diameter: 3/8 in
    threads_per_inch: 16
    head_flats: 9/16 in
    head_height: 15/64 in
    nut_flats: 9/16 in
    nut_height: 21/64 in
    flat: {inside: 13/32 in, outside: 13/16 in, thickness: 0.065 in}
    lock: {inside: 0.38 in, outside: 0.68 in, thickness: 3/32 in}
    wrench: 9/16 in
    standard_hole: 7/16 in
    oversize_hole: 1/2 in
    edge_minimum: 9/16 in
    thread_length: 1 in
    length_plus: 0 in
    length_minus: 0.04 in
    lengths: [1 in, 1-1/2 in, 2 in]
    lengths_source: invented
)";

inline const std::string catalog = R"(source: invented for tests
sections:
  - {name: C6, shape: channel, depth: 6 in, flange: 1.9 in, web: 0.2 in, flange_thickness: 0.34 in, root_radius: 0.3 in, toe_radius: 0.1 in}
  - {name: C4, shape: channel, depth: 4 in, flange: 1.6 in, web: 0.18 in, flange_thickness: 0.3 in, root_radius: 0.28 in, toe_radius: 0.1 in}
  - {name: L3, shape: angle, depth: 3 in, flange: 3 in, web: 1/4 in, root_radius: 5/16 in, toe_radius: 1/8 in}
bolts:
)" + half_inch_bolt + three_eighths_bolt;

// A folder under the system's own for scratch files, gone at the end.
class Folder {
 public:
  Folder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "bedwright_params_XXXXXX").string();
    if (!mkdtemp(pattern.data())) throw std::runtime_error("no scratch folder");
    path_ = pattern;
    write("order.yaml", order);
    write("kit.yaml", kit);
    write("frame.yaml", frame);
    write("catalog.yaml", catalog);
  }
  ~Folder() {
    std::error_code ignored;  // a scratch folder left behind fails no test
    std::filesystem::remove_all(path_, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  std::string path(const std::string& name) const { return (path_ / name).string(); }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream stream(path_ / name, std::ios::binary);
    stream << text;
    if (!stream.flush()) throw std::runtime_error("cannot write " + name);
  }
  std::variant<Job, std::vector<Problem>> load(const std::vector<std::string>& sets = {}) const {
    return load_job(path("order.yaml"), sets);
  }
  // The problems as lines, with the folder's own name taken off.
  std::vector<std::string> faults(const std::vector<std::string>& sets = {}) const {
    const auto loaded = load(sets);
    std::vector<std::string> lines;
    if (const auto* problems = std::get_if<std::vector<Problem>>(&loaded)) {
      for (const Problem& problem : *problems) {
        std::string line = to_line(problem);
        const std::string folder = path_.string() + "/";
        for (std::size_t at; (at = line.find(folder)) != std::string::npos;) line.erase(at, folder.size());
        lines.push_back(line);
      }
    }
    return lines;
  }

 private:
  std::filesystem::path path_;
};

// `text` with the first `from` in it changed; a test that asks for what is not there is wrong.
inline std::string changed(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) throw std::logic_error("sample has no " + from);
  return text.replace(at, from.size(), to);
}

}  // namespace bedwright::samples
