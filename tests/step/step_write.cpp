// Writes the sample bed's STEP file: step_write FILE TABS.
#include <exception>
#include <iostream>

#include "kernel/sample.h"
#include "kernel/step.h"

int main(int count, char** arguments) {
  try {
    if (count != 3) throw std::runtime_error("a file and a number, please");
    bedwright::write_step(bedwright::sample::bed(std::stoi(arguments[2])),
                          {"A-1042", "2024-05-31", "An Author", "A Shop", "bedwright test"}, arguments[1]);
    return 0;
  } catch (const std::exception& failure) {
    std::cerr << failure.what() << "\n";
    return 1;
  }
}
