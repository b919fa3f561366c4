// For the host: writes cases made of the shipped orders, whole and damaged, and holds
// what node made of them to what the host makes of them.
//   hold write PARAMS CASES         hold compare CASES RESULTS
#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "browser/cases.h"
#include "support/damage.h"
#include "support/shipped.h"
#include "yaml/text.h"

namespace fs = std::filesystem;
using namespace bedwright;
using testing::Json;
using testing::Text;

namespace {

constexpr int damaged_cases = 400;

// What cannot be read makes no job, whose digest would ask for the bytes.
Json carried(const Text& text) {
  const Document document = parse_document(text.path, text.bytes);
  return {{"content", document.problems.empty() ? text.bytes : ""}, {"tree", tree_json(document)}};
}

class Cases {
 public:
  explicit Cases(const fs::path& folder) : texts_(testing::shipped_texts(folder)) {
    for (const Text& text : texts_) all_["files"].push_back(carried(text));
  }

  Json made() {
    testing::Damage damage(20261127);
    const std::vector<std::vector<std::string>> sets{{},
                                                     {"track.rail_length=84 in"},
                                                     {"kit.gauge=35 in", "jacks=[18 in, 210 in]"},
                                                     {"frame.cross_member={section: C4, max_spacing: 30 in}"},
                                                     {"kit=../kits/none.yaml"},
                                                     {"order.date=2023-02-30"}};
    for (std::size_t i = 0; i < texts_.size(); ++i)
      if (is_order(i))
        for (const auto& set : sets) add(i, i, set);
    for (int k = 0; k < damaged_cases; ++k) {
      std::size_t order = damage.pick(texts_.size());
      while (!is_order(order)) order = (order + 1) % texts_.size();
      const std::size_t at = damage.pick(3) == 0 ? order : damage.pick(texts_.size());
      all_["files"].push_back(carried({texts_[at].path, damage(texts_[at].bytes)}));
      std::string set = damage("track.bunk_pitch=21 in");
      const bool told = first_bad_byte(set) == std::string::npos;  // results are JSON, which is UTF-8
      add(order, at, k % 4 == 0 && told ? std::vector{set} : std::vector<std::string>{},
          all_["files"].size() - 1);
    }
    return all_;
  }

 private:
  bool is_order(std::size_t i) const { return texts_[i].path.starts_with("params/orders/"); }

  // The order with every shipped file, `at` replaced by the file of number `by`.
  void add(std::size_t order, std::size_t at, const std::vector<std::string>& sets, std::size_t by = 0) {
    Json files = Json::array();
    for (std::size_t i = 0; i < texts_.size(); ++i) files.push_back(by > 0 && i == at ? by : i);
    all_["cases"].push_back({{"files", files}, {"order", texts_[order].path}, {"sets", sets}});
  }

  std::vector<Text> texts_;
  Json all_ = {{"files", Json::array()}, {"cases", Json::array()}};
};

Json read(const char* path) {
  std::ifstream stream(path);
  if (!stream) throw std::runtime_error(fmt::format("{} cannot be read", path));
  return Json::parse(stream);
}

// Says how many cases differ. A value that needs a YAML parser is let go, where node
// says so, and counted.
int compare(const Json& cases, const Json& got) {
  const Json wanted = testing::results_of(cases);
  if (wanted.size() != got.size() || wanted.empty()) throw std::runtime_error("not as many results as cases");
  int differ = 0, let_go = 0, jobs = 0;
  for (std::size_t i = 0; i < wanted.size(); ++i) {
    const auto text = got[i].get<std::string>();
    jobs += text.find("\norder.order.number = ") != std::string::npos;
    if (got[i] == wanted[i]) continue;
    if (text.find("has a value that is not read here") != std::string::npos) {
      ++let_go;
      continue;
    }
    if (++differ <= 3)
      fmt::print("case {}\nhost:\n{}\nnode:\n{}\n", cases["cases"][i].dump(), wanted[i].get<std::string>(),
                 text);
  }
  fmt::print("{} cases, {} jobs, {} with a value that needs a YAML parser, {} differ\n", wanted.size(), jobs,
             let_go, differ);
  const bool telling = jobs >= 30 && let_go * 10 < static_cast<int>(wanted.size());
  return differ == 0 && telling ? 0 : 1;
}

}  // namespace

int main(int count, char** words) try {
  const std::string verb = count == 4 ? words[1] : "";
  if (verb == "compare") return compare(read(words[2]), read(words[3]));
  if (verb != "write") throw std::runtime_error("hold write PARAMS CASES, or hold compare CASES RESULTS");
  std::ofstream stream(words[3]);
  stream << Cases(words[2]).made().dump() << "\n";
  if (!stream.flush()) throw std::runtime_error(fmt::format("{} cannot be written", words[3]));
  return 0;
} catch (const std::exception& error) {
  fmt::print(stderr, "hold: {}\n", error.what());
  return 2;
}
