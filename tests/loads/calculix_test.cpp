// The demo's main as beam elements of another program, CalculiX (ccx): sag and jack
// loads within 1 %. Skipped where ccx is not installed.
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <sstream>

#include "bed/names.h"
#include "loads/loads.h"
#include "loads/log.h"
#include "loads/steel.h"
#include "support/demo.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

// Loads on one main in the case the result draws, as points: an even load becomes
// points a node apart.
std::map<Mm, Newton> main_loads(const Job& job, const LoadsResult& r, Side main) {
  std::map<Mm, Newton> loads;
  const Mm spacing = job.frame.main.spacing;
  const double side = outward(main);
  const auto add = [&](Mm from, Mm to, Newton force) {
    const int pieces = to - from < 1 ? 1 : static_cast<int>((to - from) / 25) + 1;
    for (int i = 0; i < pieces; ++i)
      loads[std::round(from + (i + 0.5) * (to - from) / pieces)] += force / pieces;
  };
  for (const Weight& w : r.weights.weights)
    if (w.carried != Carried::head) add(w.from, w.to, w.mass * gravity * (0.5 + side * w.centre.y / spacing));
  for (const BeamLoad& w : head_wheels(job, r.stand.head_x, job.kit.head.mass * gravity))
    add(w.from, w.to, w.force * (0.5 + side * job.kit.head.mass_y / spacing));
  for (const BunkPush& b : r.stand.log_drawn) add(b.x, b.x, b.force * (0.5 + side * r.stand.log_y / spacing));
  return loads;
}

// A rectangle of the main's inertia, flat enough that shear does not count: the
// program's beams bend without it. Poisson's ratio 0, so that its width does not stiffen it.
constexpr Mm depth = 60;

void write_input(const fs::path& file, const std::map<Mm, Newton>& loads, const std::vector<Mm>& supports,
                 Mm4 inertia) {
  std::map<Mm, int> places;
  for (const auto& [x, force] : loads) places[x] = 0;
  for (Mm x : supports) places[x] = 0;
  for (Mm x = places.begin()->first; x < places.rbegin()->first; x += 60) places[std::round(x)] = 0;
  std::ofstream out(file);
  out << "*NODE,NSET=NALL\n";
  int number = 0;
  std::vector<Mm> x;
  for (auto& [at, n] : places) {
    n = ++number;
    x.push_back(at);
    out << n << "," << at << ",0,0\n";
  }
  for (std::size_t i = 0; i + 1 < x.size(); ++i)
    out << ++number << "," << (x[i] + x[i + 1]) / 2 << ",0,0\n";  // middles
  out << "*ELEMENT,TYPE=B32,ELSET=EALL\n";
  for (std::size_t i = 0; i + 1 < x.size(); ++i)
    out << i + 1 << "," << i + 1 << "," << x.size() + i + 1 << "," << i + 2 << "\n";
  out << "*MATERIAL,NAME=S\n*ELASTIC\n"
      << steel_modulus << ",0\n*BEAM SECTION,ELSET=EALL,MATERIAL=S,SECTION=RECT\n"
      << depth << "," << 12 * inertia / (depth * depth * depth) << "\n0,0,1\n*BOUNDARY\n";
  for (std::size_t i = 0; i < supports.size(); ++i) {
    if (i == 0) out << places[supports[i]] << ",1,1\n" << places[supports[i]] << ",4,4\n";
    out << places[supports[i]] << ",2,3\n";
  }
  out << "*NSET,NSET=HELD\n";
  for (Mm s : supports) out << places[s] << ",\n";
  out << "*STEP\n*STATIC\n*CLOAD\n";
  for (const auto& [at, force] : loads) out << places[at] << ",3," << -force << "\n";
  out << "*NODE PRINT,NSET=NALL\nU\n*NODE PRINT,NSET=HELD\nRF\n*END STEP\n";
}

struct Answer {
  double sag = 0;
  std::vector<double> reactions;
};

Answer read_answer(const fs::path& file) {
  Answer a;
  std::ifstream in(file);
  std::string line;
  bool forces = false;
  while (std::getline(in, line)) {
    if (line.find("forces") != std::string::npos) forces = true;
    std::istringstream words(line);
    int node = 0;
    double x = 0, y = 0, z = 0;
    if (!(words >> node >> x >> y >> z)) continue;
    if (forces)
      a.reactions.push_back(z);
    else
      a.sag = std::max(a.sag, -z);
  }
  return a;
}

TEST(CalculiX, TheDemosMainSagsAndStandsAlike) {
  if (std::system("command -v ccx >/dev/null 2>&1") != 0) GTEST_SKIP() << "calculix-ccx is not installed";
  for (const char* order : {"base", "lot_frame"}) {
    const Job job = testing::demo_job(order);
    const Bed bed = testing::bed_of(job);
    const LoadsResult r = run_loads(job, bed);
    const auto loads = main_loads(job, r, r.stand.side);
    std::vector<Mm> supports;
    for (Mm x : job.order.jacks) supports.push_back(std::round(x));
    const fs::path folder = fs::temp_directory_path() / ("bedwright_ccx_" + std::string(order));
    fs::create_directories(folder);
    const Bending b = bending_of(*job.catalog.section(job.frame.main.section.text));
    write_input(folder / "main.inp", loads, supports, b.inertia);
    ASSERT_EQ(std::system(("cd '" + folder.string() + "' && ccx main >ccx.log 2>&1").c_str()), 0);
    Answer a = read_answer(folder / "main.dat");
    ASSERT_EQ(a.reactions.size(), supports.size()) << order;
    // ccx prints a node's whole outside force: the support's push less the load put on
    // the node itself (the jack's own weight).
    for (std::size_t i = 0; i < supports.size(); ++i)
      if (const auto own = loads.find(supports[i]); own != loads.end()) a.reactions[i] += own->second;
    EXPECT_NEAR(a.sag, r.stand.main_sag, 0.01 * r.stand.main_sag) << order;

    // The same case by the program's own beam, for its jack loads.
    std::vector<BeamSupport> held;
    for (Mm x : supports) held.push_back({x, false});
    const Beam beam(held, {}, steel_modulus * b.inertia);
    std::vector<BeamLoad> points;
    double total = 0;
    for (const auto& [x, force] : loads) points.push_back({x, x, force}), total += force;
    const auto state = beam.solve(beam.field(points));
    ASSERT_TRUE(state.has_value());
    for (std::size_t i = 0; i < supports.size(); ++i) {
      EXPECT_NEAR(a.reactions[i], state->reactions[i], 0.01 * state->reactions[i])
          << order << " jack " << i + 1;
      const JackLoad& jack = r.stand.jacks[r.stand.side == Side::left ? i : supports.size() + i];
      EXPECT_GE(a.reactions[i], 0.99 * jack.least) << name(jack.id);
      EXPECT_LE(a.reactions[i], 1.01 * jack.most) << name(jack.id);
    }
    fs::remove_all(folder);
  }
}

}  // namespace
}  // namespace bedwright
