// Files as editors, disks and hands damage them (support/damage.h): the order, the kit, the
// frame and the catalogue of every order there is. Each is a bed or a list of problems, one
// line each; nothing else ever comes out. BEDWRIGHT_DAMAGED_FILES says how many (default
// 600), BEDWRIGHT_SWEEP_SEED which.
#include <gtest/gtest.h>

#include <iostream>

#include "support/damage.h"
#include "support/shipped.h"
#include "sweep/look.h"
#include "sweep/tally.h"

namespace bedwright::sweep {
namespace {

using testing::Text;

struct Names {
  const char *order, *kit, *frame;
};
const std::vector<Names> orders = {{"params/orders/base.yaml", "tansy_t49", "six_inch_plate"},
                                   {"params/orders/one_extension.yaml", "tansy_t49", "six_inch_clip"},
                                   {"params/orders/metric.yaml", "tansy_m1250", "metric_clip"},
                                   {"params/orders/lot_frame.yaml", "tansy_t49_long", "lot_frame_7"},
                                   {"tests/sweep/light_metric.yaml", "tansy_m1250", "metric_clip"},
                                   {"tests/sweep/heavy_tandem.yaml", "tansy_t49", "six_inch_clip"}};

class Tree {
 public:
  Tree() : texts_(testing::shipped_texts(std::string(BEDWRIGHT_SOURCE) + "/params")) {
    for (const char* file : {"tests/sweep/light_metric.yaml", "tests/sweep/heavy_tandem.yaml"})
      texts_.push_back({file, testing::bytes_of(std::string(BEDWRIGHT_SOURCE) + "/" + file)});
    for (const Text& text : texts_) files_.push_back({text.bytes, parse_document(text.path, text.bytes)});
  }

  std::size_t find(const std::string& path) const {
    for (std::size_t i = 0; i < texts_.size(); ++i)
      if (texts_[i].path == path) return i;
    throw std::runtime_error(path + " is not there");
  }
  const std::string& text(std::size_t at) const { return texts_[at].bytes; }

  Examination examined(const std::string& order, std::size_t at, const std::string& bytes) const {
    std::vector<StoredFile> files = files_;
    files[at] = {bytes, parse_document(texts_[at].path, bytes)};
    FileStore store(files);
    return examine(store, order);
  }

 private:
  std::vector<Text> texts_;
  std::vector<StoredFile> files_;
};

TEST(Damaged, FileIsABedOrProblemsAndNothingElse) {
  const Tree tree;
  testing::Damage damage(static_cast<unsigned>(number_from("BEDWRIGHT_SWEEP_SEED", 1)));
  const std::uint64_t wanted = number_from("BEDWRIGHT_DAMAGED_FILES", 600);
  Tally failures;
  Watch watch;
  int beds = 0, refused = 0;
  for (std::uint64_t i = 0; i < wanted; ++i) {
    const Names& names = orders[damage.pick(orders.size())];
    const std::string path = std::vector<std::string>{
        names.order, std::string("params/kits/") + names.kit + ".yaml",
        std::string("params/frames/") + names.frame + ".yaml",
        std::vector<std::string>{"params/catalog/channels.yaml", "params/catalog/angles.yaml",
                                 "params/catalog/fasteners_inch.yaml", "params/catalog/fasteners_metric.yaml",
                                 "params/catalog/species.yaml",
                                 "params/catalog/tyres.yaml"}[damage.pick(6)]}[damage.pick(4)];
    const std::size_t at = tree.find(path);
    const std::string damaged = damage(tree.text(at));
    watch.on(path + " damaged:\n" + damaged);
    const auto fail = [&](const std::string& kind, const std::string& what) {
      if (failures.count(kind))
        failures.tell(kind, what, fmt::format("{} of {}:\n{}", path, names.order, damaged));
    };
    try {
      const std::clock_t start = std::clock();
      const Examination e = tree.examined(names.order, at, damaged);
      if (const double seconds = cpu_since(start); seconds > 1)
        fail("slow", fmt::format("{:.1f} s", seconds));
      ++(e ? beds : refused);
      if (!e) {
        if (const auto fault = fault_of(e.problems)) fail("a problem not told", *fault);
      } else if (const auto what = not_finite(*e.bed)) {
        fail("not finite", *what);
      }
    } catch (const std::exception& e) {
      fail("exception", e.what());
    }
  }
  std::cout << fmt::format("{} damaged files: {} beds all the same, {} refused\n", wanted, beds, refused)
            << failures.told();
  EXPECT_EQ(failures.all(), 0);
  // Only that the damage reaches both.
  EXPECT_GT(beds, 0);
  EXPECT_GT(refused, 0);
}

}  // namespace
}  // namespace bedwright::sweep
