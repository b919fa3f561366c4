// For node: reads cases and writes what loading makes of them.
//   node load.js CASES RESULTS
#include <cstdio>
#include <fstream>

#include "browser/cases.h"

int main(int count, char** words) {
  if (count != 3) return 2;
  using bedwright::testing::Json;
  std::ifstream cases(words[1]);
  std::ofstream results(words[2]);
  results << bedwright::testing::results_of(Json::parse(cases)).dump(1) << "\n";
  if (results.flush()) return 0;
  std::fputs("the results cannot be written\n", stderr);
  return 1;
}
