#include "card/arena.hpp"

#include <algorithm>
#include <cstdlib>
#include <cstring>
#include <limits>

namespace qtn {
namespace {

constexpr std::size_t kChunk = std::size_t{1} << 15;
constexpr std::size_t kHead = 16;  // before each block: its size, and room to keep it aligned

}  // namespace

Arena::~Arena() {
  for (const Chunk& chunk : chunks_) std::free(chunk.bytes);
}

Arena& Arena::here() {
  thread_local Arena arena;
  return arena;
}

void* Arena::take_bytes(std::size_t size) {
  if (size > std::numeric_limits<std::size_t>::max() / 2) std::abort();
  const std::size_t whole = kHead + (size + kHead - 1) / kHead * kHead;
  if (chunks_.empty() || chunks_.back().size - used_ < whole) {
    const std::size_t chunk = std::max(whole, kChunk);
    char* const bytes = static_cast<char*>(std::malloc(chunk));
    if (bytes == nullptr) std::abort();  // as the library itself does
    chunks_.push_back({bytes, chunk});
    used_ = 0;
  }
  char* const head = chunks_.back().bytes + used_;
  used_ += whole;
  std::memcpy(head, &size, sizeof size);
  return head + kHead;
}

void* Arena::take(std::size_t count, std::size_t size) {
  if (size != 0 && count > std::numeric_limits<std::size_t>::max() / size) std::abort();
  void* const block = take_bytes(count * size);
  std::memset(block, 0, count * size);
  return block;
}

void* Arena::resize(void* block, std::size_t size) {
  if (block == nullptr) return take_bytes(size);
  std::size_t before = 0;
  std::memcpy(&before, static_cast<char*>(block) - kHead, sizeof before);
  if (size <= before) return block;
  void* const moved = take_bytes(size);
  std::memcpy(moved, block, before);
  return moved;
}

void Arena::reset() {
  std::size_t kept = 0;
  if (!chunks_.empty() && chunks_.front().size == kChunk) kept = 1;
  for (std::size_t i = kept; i < chunks_.size(); ++i) std::free(chunks_[i].bytes);
  chunks_.resize(kept);
  used_ = 0;
}

}  // namespace qtn
