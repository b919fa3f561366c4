// For the host: writes random orders, and holds what the page's module finds in them to
// what the host finds without a judge: every field of every finding.
//   browser_findings write TOP ORDERS SEED CASES         browser_findings compare TOP CASES RESULTS
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "brute/random_order.h"
#include "examine/findings_json.h"
#include "support/shipped.h"
#include "yaml/tree_json.h"

using namespace bedwright;
using Json = nlohmann::ordered_json;

namespace {

// Each base as it is, then so many spoilt ones.
Json cases(const std::string& top, int orders, unsigned seed) {
  Json all = {{"files", Json::object()}, {"cases", Json::array()}};
  for (const StoredFile& file : testing::shipped_files(top))
    all["files"][file.document.file] = tree_json(file.document);
  const auto add = [&](const std::string& name, const std::vector<std::string>& sets) {
    all["cases"].push_back({{"order", testing::shipped_order(name)}, {"sets", sets}});
  };
  for (const testing::BaseOrder& base : testing::every_base) add(base.name, {});
  testing::OrderMaker maker(seed, testing::every_base);
  for (int i = 0; i < orders; ++i) {
    const testing::RandomOrder order = maker.make();
    add(order.name, order.sets);
  }
  return all;
}

Json read(const std::string& path) {
  std::ifstream stream(path);
  if (!stream) throw std::runtime_error(fmt::format("{} cannot be read", path));
  return Json::parse(stream);
}

// The host reads the files themselves, not their trees.
int compare(const std::string& top, const Json& asked, const Json& got) {
  const Json& orders = asked.at("cases");
  if (got.size() != orders.size() || got.empty()) throw std::runtime_error("not as many results as cases");
  FileStore store(testing::shipped_files(top));
  std::size_t differ = 0, impossible = 0, stopped = 0, open = 0, findings = 0;
  for (std::size_t i = 0; i < got.size(); ++i) {
    const Json wanted =
        unjudged_json(examine(store, orders[i].at("order").get<std::string>(),
                              orders[i].at("sets").get<std::vector<std::string>>(), ExamineOptions{}));
    impossible += wanted.contains("problems");
    if (wanted.contains("findings")) {
      stopped += wanted["stopped"].get<bool>();
      open += wanted["open"].get<std::size_t>();
      findings += wanted["findings"].size();
    }
    if (got[i] == wanted) continue;
    if (++differ <= 3)
      fmt::print("{}\nhost: {}\npage: {}\n", orders[i].dump(), wanted.dump(1), got[i].dump(1));
  }
  fmt::print("{} orders, {} of them impossible, {} stopped; {} findings, {} open; {} orders differ\n",
             got.size(), impossible, stopped, findings, open, differ);
  const bool telling = impossible * 2 < got.size() && stopped > got.size() / 10 && open > 0;
  if (!telling) fmt::print("orders this spoilt, or this sound, prove nothing\n");
  return differ == 0 && telling ? 0 : 1;
}

}  // namespace

int main(int count, char** words) try {
  const std::vector<std::string> said(words + 1, words + count);
  if (said.size() == 4 && said[0] == "compare") return compare(said[1], read(said[2]), read(said[3]));
  if (said.size() != 5 || said[0] != "write")
    throw std::runtime_error("write TOP ORDERS SEED CASES, or compare TOP CASES RESULTS");
  std::ofstream stream(said[4]);
  stream << cases(said[1], std::stoi(said[2]), static_cast<unsigned>(std::stoul(said[3]))).dump() << "\n";
  if (!stream.flush()) throw std::runtime_error(fmt::format("{} cannot be written", said[4]));
  return 0;
} catch (const std::exception& error) {
  fmt::print(stderr, "browser_findings: {}\n", error.what());
  return 2;
}
