#include "packet/packet.h"

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

#include "formats/digest.h"

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
    folder_ = root_ / "1042";
  }
  void TearDown() override { fs::remove_all(root_); }

  static Packet packet(const std::string& word, std::size_t size = 100) {
    std::string content;
    while (content.size() < size) content += word;
    return {"0.1.0",
            "0123abcd-dirty",
            sha256(word),
            {"track.rail_length=80 in"},
            PacketState::released,
            {{"lists/parts.csv", content}, {"cut/tab plate.dxf", word}, {"report.json", "{}"}}};
  }
  // The word every file of the folder was written from, each held to the manifest.
  std::string word() const {
    const auto json = nlohmann::json::parse(read(folder_ / "manifest.json"));
    std::size_t files = 1;
    for (const auto& f : json["files"]) {
      const std::string content = read(folder_ / f["path"].get<std::string>());
      EXPECT_EQ(content.size(), f["bytes"]);
      EXPECT_EQ(sha256(content), f["sha256"]);
      ++files;
    }
    std::size_t found = 0;
    for (const auto& e : fs::recursive_directory_iterator(folder_)) found += e.is_regular_file();
    EXPECT_EQ(found, files);
    return read(folder_ / "cut/tab plate.dxf");
  }
  std::size_t siblings() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(root_), fs::directory_iterator{}));
  }
  std::string refusal(const Packet& p) {
    try {
      write_packet(folder_, p);
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
    EXPECT_THROW(write_packet(folder_, p), std::invalid_argument) << path;
  }
  Packet twice = packet("one");
  twice.files.push_back(twice.files[0]);
  EXPECT_THROW(write_packet(folder_, twice), std::invalid_argument);
  EXPECT_EQ(siblings(), 0U);
}

TEST_F(PacketTest, writes_replaces_and_leaves_nothing_beside) {
  write_packet(folder_, packet("one"));
  EXPECT_EQ(word(), "one");
  Packet two = packet("two");
  two.files.erase(two.files.begin());  // a file that is gone from the new packet is gone
  write_packet(folder_ / "", two);
  EXPECT_EQ(word(), "two");
  EXPECT_FALSE(fs::exists(folder_ / "lists"));
  EXPECT_EQ(siblings(), 1U);
}

TEST_F(PacketTest, what_is_not_ours_is_left_alone) {
  fs::create_directory(folder_);
  write_packet(folder_, packet("one"));  // an empty folder holds nothing to lose
  std::ofstream(folder_ / "notes.txt") << "mine";
  EXPECT_THAT(refusal(packet("two")), HasSubstr("holds notes.txt"));
  EXPECT_EQ(read(folder_ / "notes.txt"), "mine");
  fs::remove(folder_ / "manifest.json");
  EXPECT_THAT(refusal(packet("two")), HasSubstr("no readable manifest.json"));
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
  folder_ = root_ / "file" / "1042";
  EXPECT_THAT(refusal(packet("one")), HasSubstr((root_ / "file").string()));
}

// Runs `work` in a child; its exit status, 0 only when it threw a runtime_error
// whose text holds `wanted`.
int child_refuses(const fs::path& folder, const Packet& p, const std::string& wanted, void (*prepare)()) {
  const pid_t child = fork();
  if (child == 0) {
    prepare();
    try {
      write_packet(folder, p);
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
  write_packet(folder_, packet("one"));
  const auto prepare = [] {
    signal(SIGXFSZ, SIG_IGN);
    const rlimit limit{4096, 4096};
    if (setrlimit(RLIMIT_FSIZE, &limit) != 0) _exit(5);
  };
  EXPECT_EQ(child_refuses(folder_, packet("two", 100000), "File too large", prepare), 0);
  EXPECT_EQ(word(), "one");
  EXPECT_EQ(siblings(), 1U);
}

TEST_F(PacketTest, a_folder_that_may_not_be_written_leaves_the_old_folder) {
  if (getuid() != 0) GTEST_SKIP() << "needs root, to drop it";
  write_packet(folder_, packet("one"));
  fs::permissions(root_, fs::perms::owner_all | fs::perms::group_read | fs::perms::group_exec |
                             fs::perms::others_read | fs::perms::others_exec);
  const auto prepare = [] {
    if (setgid(65534) != 0 || setuid(65534) != 0) _exit(5);
  };
  EXPECT_EQ(child_refuses(folder_, packet("two"), "Permission denied", prepare), 0);
  EXPECT_EQ(word(), "one");
}

TEST_F(PacketTest, a_full_disk_leaves_the_old_folder) {
  const fs::path disk = root_ / "disk";
  fs::create_directory(disk);
  if (mount("tmpfs", disk.c_str(), "tmpfs", 0, "size=256k") != 0) {
    GTEST_SKIP() << "a small disk of our own cannot be mounted here";
  }
  folder_ = disk / "1042";
  write_packet(folder_, packet("one"));
  EXPECT_THAT(refusal(packet("two", 1000000)), HasSubstr("No space left"));
  EXPECT_EQ(word(), "one");
  write_packet(folder_, packet("three"));
  EXPECT_EQ(word(), "three");
  umount(disk.c_str());
}

TEST_F(PacketTest, a_run_killed_at_any_moment_leaves_a_whole_folder) {
  write_packet(folder_, packet("old"));
  int died = 0;
  for (int i = 0; i < 40; ++i) {
    const pid_t child = fork();
    if (child == 0) {
      for (;;) {
        write_packet(folder_, packet("new", 200000));
        write_packet(folder_, packet("old", 200000));
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
  write_packet(folder_, packet("last"));
  EXPECT_EQ(word(), "last");
  EXPECT_EQ(siblings(), 1U) << "leftovers of killed runs";
}

TEST_F(PacketTest, leftovers_of_a_killed_run_are_removed) {
  fs::create_directories(root_ / ".1042.part-77" / "cut");
  std::ofstream(root_ / ".1042.part-77" / "cut" / "x") << "x";
  std::ofstream(root_ / ".1042.lock");
  fs::create_directory(root_ / ".1043.part-77");  // another order's
  write_packet(folder_, packet("one"));
  EXPECT_EQ(word(), "one");
  EXPECT_FALSE(fs::exists(root_ / ".1042.part-77"));
  EXPECT_TRUE(fs::exists(root_ / ".1043.part-77"));
}

TEST_F(PacketTest, runs_at_once_do_not_mix) {
  std::vector<pid_t> children;
  for (int i = 0; i < 4; ++i) {
    const pid_t child = fork();
    if (child == 0) {
      try {
        for (int k = 0; k < 15; ++k)
          write_packet(folder_, packet(std::string(1, static_cast<char>('a' + i)), 50000));
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
