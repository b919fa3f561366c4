// Every key over its whole range (swept_orders.h), each order examined and then looked at
// by an inspection that calls no line of the rules (inspection.h).
// BEDWRIGHT_SWEEP_ORDERS says how many orders (default 300), BEDWRIGHT_SWEEP_FROM the
// number of the first, BEDWRIGHT_SWEEP_SEED which sweep.
#include <gtest/gtest.h>

#include <iostream>

#include "sweep/look.h"
#include "sweep/tally.h"

namespace bedwright::sweep {
namespace {

TEST(Sweep, NoOrderIsReleasedThatWouldNotGoTogether) {
  const std::string top = BEDWRIGHT_SOURCE;
  const OrderSweep sweep = usual_sweep(top, number_from("BEDWRIGHT_SWEEP_SEED", 1));
  const std::uint64_t first = number_from("BEDWRIGHT_SWEEP_FROM", 0),
                      wanted = number_from("BEDWRIGHT_SWEEP_ORDERS", 300);
  FileStore store;
  Tally failures, only_stopped;
  std::map<Outcome, int> outcomes;
  Watch watch;
  for (std::uint64_t number = first; number < first + wanted; ++number) {
    const SweptOrder order = sweep.order(number);
    watch.on(order.told());
    LookOptions options;
    options.inspect_stopped = number % 5 == 0;
    options.ask_kernel = number % 40 == 0;
    const Look look = look_at(store, top, order, options);
    ++outcomes[look.outcome];
    for (const auto& [kind, what] : look.failures)
      if (failures.count(kind)) failures.tell(kind, what, least(store, top, order, kind, options).told());
    for (const auto& [code, what] : look.only_stopped)
      if (only_stopped.count(code)) only_stopped.tell(code, what, order.told());
  }
  std::cout << fmt::format("{} orders: {} bad input, {} stopped, {} released, {} exceptions\n", wanted,
                           outcomes[Outcome::bad_input], outcomes[Outcome::stopped], outcomes[Outcome::clear],
                           outcomes[Outcome::exception])
            << "stopped by a rule and passed by the inspection, of one stopped bed in five:\n"
            << only_stopped.told() << "failures:\n"
            << failures.told();
  EXPECT_EQ(failures.all(), 0);
  // The sweep is worth nothing where it meets but one of the two.
  EXPECT_GT(outcomes[Outcome::clear], static_cast<int>(wanted / 20));
  EXPECT_GT(outcomes[Outcome::stopped], static_cast<int>(wanted / 20));
}

}  // namespace
}  // namespace bedwright::sweep
