// Orders loaded from files handed over as trees, held to the same orders read from
// the disk: the same job to the last bit, or the same problems word for word.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <filesystem>
#include <iterator>
#include <nlohmann/json.hpp>
#include <set>

#include "params/samples.h"
#include "support/damage.h"
#include "support/job_text.h"
#include "yaml/tree_json.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using samples::Folder;
using testing::Damage;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using testing::job_text;
using ::testing::StartsWith;

std::string bytes_of(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

// The file as a page carries it: through JSON text.
StoredFile carried(const std::string& path, const std::string& bytes) {
  const std::string json = tree_json(parse_document(path, bytes)).dump();
  return {bytes, document_from_json(nlohmann::ordered_json::parse(json))};
}

// Every .yaml under a folder, carried.
std::vector<StoredFile> all_carried(const fs::path& folder) {
  std::vector<StoredFile> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.path().extension() == ".yaml")
      files.push_back(carried(entry.path().string(), bytes_of(entry.path())));
  return files;
}

std::string from_trees(const std::vector<StoredFile>& files, const std::string& order,
                       const std::vector<std::string>& sets = {}) {
  FileStore store(files);
  return job_text(load_job(store, order, sets));
}

std::string from_disk(const std::string& order, const std::vector<std::string>& sets = {}) {
  return job_text(load_job(order, sets));
}

const fs::path shipped = BEDWRIGHT_SOURCE "/params";

std::vector<std::string> shipped_orders() {
  std::vector<std::string> orders;
  for (const auto& entry : fs::directory_iterator(shipped / "orders"))
    orders.push_back(entry.path().string());
  return orders;
}

TEST(GivenFiles, MakeTheSameJobOfEveryShippedOrder) {
  const std::vector<StoredFile> files = all_carried(shipped);
  ASSERT_GE(shipped_orders().size(), 5u);
  for (const std::string& order : shipped_orders()) {
    const std::string wanted = from_disk(order);
    EXPECT_THAT(wanted, HasSubstr("\norder.order.number = ")) << order;  // a job, no problems
    EXPECT_EQ(from_trees(files, order), wanted) << order;
  }
}

TEST(GivenFiles, TakeOverridesAsTheDiskDoes) {
  const std::vector<StoredFile> files = all_carried(shipped);
  for (const std::string& order : shipped_orders())
    for (const std::vector<std::string>& sets :
         {std::vector<std::string>{"track.rail_length=84 in", "kit.gauge=35 in", "jacks=[18 in, 200 in]"},
          {"kit.rail.thickness=three", "frame.main={section: C66}", "order.date=2023-02-30"},
          {"kit=../kits/none.yaml"},
          {"kit=../kits"},
          {"kit=../frames/../kits/tansy_t49_long.yaml"},
          {"frame=../kits/../kits/tansy_t49.yaml", "kit=../kits/tansy_t49.yaml"},
          {"kit=.."},
          {"kit=."},
          {"kit=" + order},
          {"kit=../kits/tansy_t49.yaml/"},
          {"no equals"},
          {"kit.rail=[1"}})
      EXPECT_EQ(from_trees(files, order, sets), from_disk(order, sets)) << order << " " << sets[0];
}

TEST(GivenFiles, MakeTheSameOfAnOrderWithOverridesOfItsOwn) {
  const Folder folder;
  folder.write("order.yaml", samples::order +
                                 "overrides:\n  - {key: frame.tabs.slot_length, value: 1-1/4 in}\n"
                                 "  - {key: kit.gusset.bolts, value: \"[1-1/2 in, 4-1/8 in]\"}\n"
                                 "free:\n  - {key: jacks, values: \"[18 in, 222 in],[20 in, 220 in]\"}\n");
  const std::string wanted = from_disk(folder.path("order.yaml"));
  EXPECT_THAT(wanted, HasSubstr("frame.tabs.slot_length = " + testing::KeyWriter::exact(1.25 * inch)));
  EXPECT_EQ(from_trees(all_carried(folder.path("")), folder.path("order.yaml")), wanted);
}

TEST(GivenFiles, NeedNoDisk) {
  std::vector<StoredFile> files;
  for (const auto& [name, text] : {std::pair{"order.yaml", samples::order},
                                   {"kit.yaml", samples::kit},
                                   {"frame.yaml", samples::frame},
                                   {"catalog.yaml", samples::catalog}})
    files.push_back(carried("nowhere/" + std::string(name), text));
  EXPECT_THAT(from_trees(files, "nowhere/order.yaml"), HasSubstr("\norder.order.number = A-17\n"));
  EXPECT_EQ(from_trees(files, "nowhere/order.yaml", {"kit=kits.yaml"}),
            "--set:1:1: kit: nowhere/kits.yaml does not exist; check the spelling; files are looked for "
            "beside the order\n");
  EXPECT_EQ(from_trees(files, "order.yaml"), "order.yaml: does not exist; check the spelling\n");
  EXPECT_EQ(from_trees(files, ""), "an empty name is the name of no file; name one\n");
  EXPECT_EQ(from_trees(files, "nowhere"), "nowhere: is a folder; name a file in it\n");
  EXPECT_EQ(from_trees(files, "nowhere/order.yaml", {"kit=/"}),
            "--set:1:1: kit: / is a folder; name a file in it\n");
  EXPECT_EQ(from_trees(files, "nowhere/order.yaml", {"kit=./order.yaml"}),
            "--set:1:1: kit: names the order file itself; name another file\n");
  EXPECT_EQ(from_trees({}, "nowhere/order.yaml"), "nowhere/order.yaml: does not exist; check the spelling\n");
}

TEST(GivenFiles, AreFoundBesideAnOrderHoweverItIsNamed) {
  const std::vector<StoredFile> files{
      carried("./order.yaml", samples::order), carried("kit.yaml", samples::kit),
      carried("frame.yaml", samples::frame), carried("catalog.yaml", samples::catalog)};
  EXPECT_THAT(from_trees(files, "./order.yaml"), HasSubstr("\norder.order.number = A-17\n"));
  EXPECT_EQ(from_trees(files, "./order.yaml", {"kit=./order.yaml"}),
            "--set:1:1: kit: names the order file itself; name another file\n");
}

TEST(GivenFiles, WithOneNameAreRefused) {
  const std::vector<StoredFile> twice{carried("a.yaml", "a: 1\n"), carried("a.yaml", "a: 2\n")};
  EXPECT_THROW(FileStore{twice}, std::invalid_argument);
}

// A copy of the shipped files to do damage in.
class Copy {
 public:
  Copy() {
    fs::copy(shipped, folder_.path("params"), fs::copy_options::recursive);
    for (const auto& entry : fs::recursive_directory_iterator(folder_.path("params")))
      if (entry.path().extension() == ".yaml")
        names_.push_back(fs::relative(entry.path(), folder_.path("")).string());
    std::sort(names_.begin(), names_.end());
    for (const std::string& name : names_)
      files_.push_back(carried(folder_.path(name), bytes_of(folder_.path(name))));
  }

  const std::vector<std::string>& names() const { return names_; }
  std::string order(std::size_t i) const {
    std::vector<std::string> orders;
    for (const std::string& name : names_)
      if (name.starts_with("params/orders/")) orders.push_back(name);
    return folder_.path(orders[i % orders.size()]);
  }

  // What the disk and the trees make of an order while these files are damaged.
  std::pair<std::string, std::string> both(const std::string& order, const std::set<std::size_t>& damaged,
                                           const std::vector<std::string>& sets, Damage& damage) const {
    std::vector<StoredFile> files = files_;
    for (const std::size_t i : damaged) {
      const std::string text = damage(files_[i].content);
      folder_.write(names_[i], text);
      files[i] = carried(folder_.path(names_[i]), text);
    }
    const std::string disk = from_disk(order, sets), trees = from_trees(files, order, sets);
    for (const std::size_t i : damaged) folder_.write(names_[i], files_[i].content);
    return {disk, trees};
  }

 private:
  Folder folder_;
  std::vector<std::string> names_;
  std::vector<StoredFile> files_;
};

RC_GTEST_PROP(GivenFiles, TellTheSameOfDamagedFiles, (unsigned seed)) {
  static const Copy copy;
  Damage damage(seed);
  const std::string order = copy.order(damage.pick(100));
  std::set<std::size_t> damaged;
  for (std::size_t i = 0; i <= damage.pick(3); ++i) damaged.insert(damage.pick(copy.names().size()));
  // Always the order itself or one of the files orders name most.
  for (std::size_t i = 0; i < copy.names().size(); ++i)
    if (order.ends_with(copy.names()[i]) && damage.pick(2) == 0) damaged.insert(i);
  std::vector<std::string> sets;
  if (damage.pick(3) == 0) sets.push_back(damage("track.rail_length=84 in"));
  if (damage.pick(3) == 0) sets.push_back(damage("frame.cross_member={section: C4, max_spacing: 30 in}"));
  const auto [disk, trees] = copy.both(order, damaged, sets, damage);
  RC_CLASSIFY(disk.find("\norder.order.number = ") != std::string::npos, "jobs");
  RC_ASSERT(disk == trees);
}

}  // namespace
}  // namespace bedwright
