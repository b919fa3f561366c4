#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <thread>
#include <utility>

#include "formats/digest.h"
#include "packet/release.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;

// Published: FIPS 180-2, appendix B, and the empty message of NIST's short-message vectors.
TEST(Sha256, published_vectors) {
  EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

std::string read(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

class PacketTest : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string name = (fs::temp_directory_path() / "packet-XXXXXX").string();
    ASSERT_NE(mkdtemp(name.data()), nullptr);
    root_ = name;
    folder_ = trial_folder(root_, "1042");
  }
  void TearDown() override { fs::remove_all(root_); }

  static Packet packet(const std::string& word, std::size_t size = 100) {
    std::string content;
    while (content.size() < size) content += word;
    return {{"1042", "A", "A customer", "2026-10-05", "a kit", "a frame"},
            "0.1.0",
            "0123abcd-dirty",
            sha256(word),
            {"track.rail_length=80 in"},
            PacketState::released,
            {{"lists/parts.csv", content}, {"cut/tab plate.dxf", word}, {"report.json", "{}"}}};
  }
  // The word every file of the folder was written from, each held to the manifest.
  std::string word() const { return word(folder_); }
  std::string word(const fs::path& folder) const {
    const auto json = nlohmann::json::parse(read(folder / "manifest.json"));
    std::size_t files = 1;
    for (const auto& f : json["files"]) {
      const std::string content = read(folder / f["path"].get<std::string>());
      EXPECT_EQ(content.size(), f["bytes"]);
      EXPECT_EQ(sha256(content), f["sha256"]);
      ++files;
    }
    std::size_t found = 0;
    for (const auto& e : fs::recursive_directory_iterator(folder)) found += e.is_regular_file();
    EXPECT_EQ(found, files);
    return read(folder / "cut/tab plate.dxf");
  }
  // What lies in the order's folder and in the program's own, but for its lock.
  std::size_t siblings() const { return count(folder_.parent_path()) + count(root_ / ".bedwright") - 1; }
  static std::size_t count(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator{}));
  }
  std::string refusal(const Packet& p) {
    try {
      write_trial(root_, p);
    } catch (const std::runtime_error& e) {
      return e.what();
    }
    return "nothing thrown";
  }

  fs::path root_, folder_;
};

TEST_F(PacketTest, manifest_lists_sorted_paths_with_digests) {
  const auto json = nlohmann::json::parse(manifest(packet("one")));
  EXPECT_EQ(json["program"], "bedwright");
  EXPECT_EQ(json["version"], "0.1.0");
  EXPECT_EQ(json["build"], "0123abcd-dirty");
  EXPECT_EQ(json["state"], "released");
  EXPECT_EQ(json["sets"][0], "track.rail_length=80 in");
  ASSERT_EQ(json["files"].size(), 3U);
  EXPECT_EQ(json["files"][0]["path"], "cut/tab plate.dxf");
  EXPECT_EQ(json["files"][0]["sha256"], sha256("one"));
  EXPECT_EQ(json["files"][2]["path"], "report.json");
}

TEST_F(PacketTest, paths_that_leave_the_folder_are_refused) {
  for (const char* path : {"../x", "/etc/x", "a/../../x", "", "manifest.json", "a/", "./x"}) {
    Packet p = packet("one");
    p.files.push_back({path, "x"});
    EXPECT_THROW(write_trial(root_, p), std::invalid_argument) << path;
  }
  Packet twice = packet("one");
  twice.files.push_back(twice.files[0]);
  EXPECT_THROW(write_trial(root_, twice), std::invalid_argument);
  EXPECT_TRUE(fs::is_empty(root_));
}

TEST_F(PacketTest, writes_replaces_and_leaves_nothing_beside) {
  write_trial(root_, packet("one"));
  EXPECT_EQ(word(), "one");
  Packet two = packet("two");
  two.files.erase(two.files.begin());  // a file that is gone from the new packet is gone
  write_trial(root_, two);
  EXPECT_EQ(word(), "two");
  EXPECT_FALSE(fs::exists(folder_ / "lists"));
  EXPECT_EQ(siblings(), 1U);
}

TEST_F(PacketTest, what_is_not_ours_is_left_alone) {
  fs::create_directories(folder_);
  write_trial(root_, packet("one"));  // an empty folder holds nothing to lose
  std::ofstream(folder_ / "notes.txt") << "mine";
  EXPECT_THAT(refusal(packet("two")), HasSubstr("holds notes.txt"));
  EXPECT_EQ(read(folder_ / "notes.txt"), "mine");
  fs::remove(folder_ / "manifest.json");
  EXPECT_THAT(refusal(packet("two")), HasSubstr("has no manifest.json"));
  std::ofstream(folder_ / "manifest.json") << "{\"program\": \"other\", \"files\": []}";
  EXPECT_THAT(refusal(packet("two")), HasSubstr("not one of this program"));
  std::ofstream(folder_ / "manifest.json") << "not json";
  EXPECT_THAT(refusal(packet("two")), HasSubstr("not one of this program"));
  fs::remove_all(folder_);
  std::ofstream(folder_) << "a file";
  EXPECT_THAT(refusal(packet("two")), HasSubstr("not a folder"));
  fs::remove(folder_);
  fs::create_directory(root_ / "elsewhere");
  fs::create_directory_symlink(root_ / "elsewhere", folder_);
  EXPECT_THAT(refusal(packet("two")), HasSubstr("not a folder"));
  EXPECT_TRUE(fs::is_empty(root_ / "elsewhere"));
}

TEST_F(PacketTest, a_parent_that_cannot_be_made_is_named) {
  std::ofstream(root_ / "file") << "x";
  root_ = root_ / "file";
  EXPECT_THAT(refusal(packet("one")), HasSubstr(root_.string()));
  root_ = root_.parent_path();
}

// Runs `work` in a child; its exit status, 0 only when it threw a runtime_error
// whose text holds `wanted`.
int child_refuses(const fs::path& out, const Packet& p, const std::string& wanted, void (*prepare)()) {
  const pid_t child = fork();
  if (child == 0) {
    prepare();
    try {
      write_trial(out, p);
    } catch (const std::runtime_error& e) {
      _exit(std::string(e.what()).find(wanted) != std::string::npos ? 0 : 3);
    }
    _exit(4);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return status;
}

TEST_F(PacketTest, a_file_that_grows_past_its_limit_leaves_the_old_folder) {
  write_trial(root_, packet("one"));
  const auto prepare = [] {
    signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{4096, 4096};
    if (setrlimit(RLIMIT_FSIZE, &limit) != 0) _exit(5);
  };
  EXPECT_EQ(child_refuses(root_, packet("two", 100000), "File too large", prepare), 0);
  EXPECT_EQ(word(), "one");
  EXPECT_EQ(siblings(), 1U);
}

TEST_F(PacketTest, a_folder_that_may_not_be_written_leaves_the_old_folder) {
  if (getuid() != 0) GTEST_SKIP() << "needs root, to drop it";
  write_trial(root_, packet("one"));
  for (const fs::path& shut : {root_, root_ / ".bedwright", root_ / "1042"})
    fs::permissions(shut, fs::perms::owner_all | fs::perms::group_read | fs::perms::group_exec |
                              fs::perms::others_read | fs::perms::others_exec);
  const auto prepare = [] {
    if (setgid(65534) != 0 || setuid(65534) != 0) _exit(5);
  };
  EXPECT_EQ(child_refuses(root_, packet("two"), "Permission denied", prepare), 0);
  EXPECT_EQ(word(), "one");
}

TEST_F(PacketTest, a_full_disk_leaves_the_old_folder) {
  const fs::path disk = root_ / "disk";
  fs::create_directory(disk);
  if (mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=256k") != 0) {
    GTEST_SKIP() << "a small disk of our own cannot be mounted here";
  }
  folder_ = trial_folder(disk, "1042");
  write_trial(disk, packet("one"));
  const fs::path root = std::exchange(root_, disk);
  EXPECT_THAT(refusal(packet("two", 1000000)), HasSubstr("No space left"));
  root_ = root;
  EXPECT_EQ(word(), "one");
  write_trial(disk, packet("three"));
  EXPECT_EQ(word(), "three");
  umount(disk.c_str());
}

TEST_F(PacketTest, a_run_killed_at_any_moment_leaves_a_whole_folder) {
  write_trial(root_, packet("old"));
  int died = 0;
  for (int i = 0; i < 40; ++i) {
    const pid_t child = fork();
    if (child == 0) {
      for (;;) {
        write_trial(root_, packet("new", 200000));
        write_trial(root_, packet("old", 200000));
      }
    }
    std::this_thread::sleep_for(std::chrono::microseconds(300 + 377 * i));
    kill(child, SIGKILL);
    int status = 0;
    waitpid(child, &status, 0);
    died += WIFSIGNALED(status);
    const std::string found = word();
    EXPECT_TRUE(found == "old" || found == "new") << found;
  }
  EXPECT_EQ(died, 40);
  write_trial(root_, packet("last"));
  EXPECT_EQ(word(), "last");
  EXPECT_EQ(siblings(), 1U) << "leftovers of killed runs";
}

TEST_F(PacketTest, leftovers_of_a_killed_run_are_removed) {
  fs::create_directories(root_ / ".bedwright" / "work-abcdef" / "cut");
  std::ofstream(root_ / ".bedwright" / "work-abcdef" / "cut" / "x") << "x";
  std::ofstream(root_ / ".bedwright" / "notes") << "mine";
  fs::create_directory(root_ / ".1042.part-mine");  // a name of the owner's
  write_trial(root_, packet("one"));
  EXPECT_EQ(word(), "one");
  EXPECT_FALSE(fs::exists(root_ / ".bedwright" / "work-abcdef"));
  EXPECT_TRUE(fs::exists(root_ / ".bedwright" / "notes"));
  EXPECT_TRUE(fs::exists(root_ / ".1042.part-mine"));
}

// Two people with one folder: what one leaves behind, lock and all, stops the other nowhere.
TEST_F(PacketTest, leftovers_of_another_user_block_nothing) {
  if (getuid() != 0) GTEST_SKIP() << "needs root, to be two users";
  fs::permissions(root_, fs::perms::all | fs::perms::sticky_bit);
  write_trial(root_, packet("one"));
  fs::create_directories(root_ / ".bedwright" / "work-theirs");
  std::ofstream(root_ / ".bedwright" / "work-theirs" / "x") << "x";
  fs::permissions(root_ / ".bedwright" / "lock", fs::perms::owner_read | fs::perms::others_read);
  const pid_t child = fork();
  if (child == 0) {
    if (setgid(65534) != 0 || setuid(65534) != 0) _exit(5);
    Packet other = packet("other");
    other.order.number = "1043";
    try {
      _exit(write_release(root_, other) ? 0 : 1);
    } catch (const std::exception& e) {
      fprintf(stderr, "%s\n", e.what());
      _exit(2);
    }
  }
  int status = 0;
  waitpid(child, &status, 0);
  EXPECT_EQ(status, 0);
  EXPECT_EQ(word(root_ / "1043" / "A"), "other");
}

TEST_F(PacketTest, a_release_is_never_written_over) {
  ASSERT_TRUE(write_release(root_, packet("one")));
  EXPECT_FALSE(write_release(root_, packet("two")));
  EXPECT_EQ(word(root_ / "1042" / "A"), "one");
  write_trial(root_, packet("trial"));
  EXPECT_EQ(word(root_ / "1042" / "A"), "one");
  EXPECT_EQ(word(), "trial");
}

TEST_F(PacketTest, what_is_replaced_stays_beside_with_its_reason) {
  const fs::path folder = root_ / "1042" / "A";
  ASSERT_TRUE(write_release(root_, packet("one")));
  const auto first = recorded(folder);
  ASSERT_TRUE(first);
  EXPECT_EQ(replace_release(root_, packet("two"), *first, {"pads too thin", "2026-11-01"}),
            root_ / "1042" / "A.withdrawn-1");
  EXPECT_EQ(word(folder), "two");
  EXPECT_EQ(word(root_ / "1042" / "A.withdrawn-1"), "one");
  // Who looked before that may not replace what is there now.
  EXPECT_THROW(replace_release(root_, packet("three"), *first, {"again", "2026-11-02"}), std::runtime_error);
  replace_release(root_, packet("three"), *recorded(folder), {"again", "2026-11-02"});
  const std::vector<Recorded> all = recorded_of_order(root_ / "1042");
  ASSERT_EQ(all.size(), 3U);
  EXPECT_EQ(all[0].standing, Standing::released);
  EXPECT_EQ(all[1].standing, Standing::withdrawn);
  EXPECT_EQ(all[1].why, "pads too thin");
  EXPECT_EQ(all[1].withdrawn_on, "2026-11-01");
  EXPECT_EQ(all[2].why, "again");
  for (const Recorded& record : all) EXPECT_TRUE(differences_on_disk(record).none());
}

TEST_F(PacketTest, a_replacement_killed_at_any_moment_loses_nothing) {
  ASSERT_TRUE(write_release(root_, packet("old", 100000)));
  const fs::path folder = root_ / "1042" / "A";
  const std::string old = recorded(folder)->manifest;
  for (int i = 0; i < 40; ++i) {
    const pid_t child = fork();
    if (child == 0) {
      try {
        for (int n = 0;; ++n)
          replace_release(root_, packet(std::to_string(n), 100000), *recorded(folder), {"x", "2026-11-01"});
      } catch (const std::exception&) {
      }
      _exit(0);
    }
    std::this_thread::sleep_for(std::chrono::microseconds(500 + 977 * i));
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    int olds = 0;
    for (const Recorded& record : recorded_of_order(root_ / "1042")) {
      EXPECT_NE(record.standing, Standing::damaged);
      EXPECT_TRUE(differences_on_disk(record).none()) << record.folder;
      olds += record.manifest == old;
      EXPECT_EQ(record.why, record.standing == Standing::withdrawn ? "x" : "") << record.folder;
    }
    EXPECT_EQ(olds, 1);
    write_release(root_, packet("fresh", 100000));  // where the killed run left none
  }
}

// An order may be called what another's leftovers once were.
TEST_F(PacketTest, orders_of_like_names_at_once_are_whole) {
  for (int round = 0; round < 20; ++round) {
    std::vector<pid_t> children;
    const std::string number = "X" + std::to_string(round);
    for (const std::string& name : {number, number + ".part-1", number + ".lock"}) {
      const pid_t child = fork();
      if (child == 0) {
        Packet p = packet(name, 20000);
        p.order.number = name;
        try {
          _exit(write_release(root_, p) ? 0 : 1);
        } catch (const std::exception&) {
          _exit(2);
        }
      }
      children.push_back(child);
    }
    for (const pid_t child : children) {
      int status = 0;
      waitpid(child, &status, 0);
      EXPECT_EQ(status, 0);
    }
    for (const std::string& name : {number, number + ".part-1", number + ".lock"})
      EXPECT_EQ(word(root_ / name / "A"), name);
  }
}

TEST_F(PacketTest, of_many_at_once_one_releases) {
  std::vector<pid_t> children;
  for (int i = 0; i < 6; ++i) {
    const pid_t child = fork();
    if (child == 0) _exit(write_release(root_, packet(std::string(1, static_cast<char>('a' + i)))) ? 1 : 0);
    children.push_back(child);
  }
  int released = 0;
  for (const pid_t child : children) {
    int status = 0;
    waitpid(child, &status, 0);
    released += WEXITSTATUS(status);
  }
  EXPECT_EQ(released, 1);
  word(root_ / "1042" / "A");
}

TEST_F(PacketTest, differences_tell_what_was_done_to_a_release) {
  ASSERT_TRUE(write_release(root_, packet("one")));
  const fs::path folder = root_ / "1042" / "A";
  fs::remove(folder / "report.json");
  std::ofstream(folder / "cut" / "tab plate.dxf") << "other";
  std::ofstream(folder / "cut" / "more.dxf") << "more";
  const Differences found = differences_on_disk(*recorded(folder));
  EXPECT_THAT(found.missing, ::testing::ElementsAre("report.json"));
  EXPECT_THAT(found.changed, ::testing::ElementsAre("cut/tab plate.dxf"));
  EXPECT_THAT(found.extra, ::testing::ElementsAre("cut/more.dxf"));
  std::ofstream(folder / "manifest.json") << "{}";
  EXPECT_EQ(recorded(folder)->standing, Standing::damaged);
}

TEST_F(PacketTest, a_number_is_one_customers) {
  EXPECT_EQ(place_fault(root_, packet("one").order), "");
  ASSERT_TRUE(write_release(root_, packet("one")));
  EXPECT_EQ(place_fault(root_, packet("one").order), "");
  Packet other = packet("one");
  other.order.customer = "a  Customer";
  EXPECT_EQ(place_fault(root_, other.order), "");
  other.order.customer = "Another";
  EXPECT_THAT(place_fault(root_, other.order), HasSubstr("order number 1042 is taken"));
  EXPECT_THAT(place_fault(root_ / "1042", packet("one").order), HasSubstr("names the folder above"));
  EXPECT_THAT(place_fault(root_ / "1042" / "A", packet("one").order), HasSubstr("names the folder above"));
  // Files of before a release had a folder of its own.
  fs::create_directory(root_ / "1044");
  fs::copy_file(root_ / "1042" / "A" / "manifest.json", root_ / "1044" / "manifest.json");
  other.order.number = "1044";
  EXPECT_THAT(place_fault(root_, other.order), HasSubstr("move it away first"));
}

TEST_F(PacketTest, runs_at_once_do_not_mix) {
  std::vector<pid_t> children;
  for (int i = 0; i < 4; ++i) {
    const pid_t child = fork();
    if (child == 0) {
      try {
        for (int k = 0; k < 15; ++k)
          write_trial(root_, packet(std::string(1, static_cast<char>('a' + i)), 50000));
      } catch (const std::exception&) {
        _exit(1);
      }
      _exit(0);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    waitpid(child, &status, 0);
    EXPECT_EQ(status, 0);
  }
  const std::string last = word();
  EXPECT_EQ(read(folder_ / "lists/parts.csv"), std::string(50000, last.at(0)));
  EXPECT_EQ(siblings(), 1U);
}

}  // namespace
}  // namespace bedwright
