// Starts a SchemaWriter on each kind of file.
#include "params/schema.h"

#include "params/built.h"
#include "params/frame.h"
#include "params/kit.h"
#include "params/order.h"
#include "yaml/schema.h"

namespace bedwright {

std::string order_schema() { return schema_of<Order>("Order"); }
std::string kit_schema() { return schema_of<Kit>("Track kit"); }
std::string frame_schema() { return schema_of<FrameFile>("Frame"); }
std::string built_schema() { return schema_of<Built>("What was built from a release"); }

}  // namespace bedwright
