// Takes the kernel's own printer of messages away, once.
#include "kernel/ready.h"

#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <mutex>

namespace bedwright {

void ready_kernel() {
  static std::once_flag once;
  std::call_once(once, [] { Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer)); });
}

}  // namespace bedwright
