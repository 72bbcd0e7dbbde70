#pragma once

#include <cstddef>
#include <cstdint>

// What libFuzzer calls, and the replay of the seeds.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
