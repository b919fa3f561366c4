// What the kernel keeps once for the whole process, made ready before threads share it.
#pragma once

namespace bedwright {

// The kernel makes its messenger on first use, unguarded: two threads that both come
// first (one meshes, one writes STEP) would free it under each other. So guarded()
// (kernel/guard.h) calls this before all else. Also silences it: it prints on the
// standard output. May be called from any thread, again and again.
void ready_kernel();

}  // namespace bedwright
