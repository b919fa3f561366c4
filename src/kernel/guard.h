// The kernel reports trouble by its own exception class, which is not a
// std::exception. Everything this room offers outward passes through here.
#pragma once

#include <Standard_Failure.hxx>
#include <stdexcept>
#include <string>

#include "kernel/ready.h"

namespace bedwright {

// Runs `work`; a kernel failure becomes std::runtime_error("<what>: <reason>").
template <typename Work>
decltype(auto) guarded(const std::string& what, Work&& work) {
  ready_kernel();
  try {
    return work();
  } catch (const Standard_Failure& failure) {
    const std::string reason = failure.GetMessageString() ? failure.GetMessageString() : "";
    throw std::runtime_error(what + ": " + (reason.empty() ? failure.DynamicType()->Name() : reason));
  }
}

}  // namespace bedwright
