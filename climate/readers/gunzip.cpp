#include "climate/readers/gunzip.hpp"

#include "climate/base/problem.hpp"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <limits>

namespace nightsow::climate {

namespace {

constexpr std::string_view gzip_mark = "\x1F\x8B";
constexpr int gzip_only = 16 + MAX_WBITS; // zlib's way to say: a gzip header, nothing else
constexpr std::size_t piece = std::size_t{64} * 1024;

[[noreturn]] void refuse(std::string_view name, std::string found, std::string remedy) {
  throw InputError({Severity::error,
                    std::string(name),
                    0,
                    0,
                    std::move(found),
                    "a whole gzip file of up to 1 GiB unpacked",
                    std::move(remedy)});
}

// zlib's state, which ends itself.
class Inflation {
public:
  Inflation() { ready_ = inflateInit2(&stream_, gzip_only) == Z_OK; }

  Inflation(const Inflation&) = delete;
  Inflation& operator=(const Inflation&) = delete;
  Inflation(Inflation&&) = delete;
  Inflation& operator=(Inflation&&) = delete;

  ~Inflation() { inflateEnd(&stream_); }

  [[nodiscard]] bool ready() const { return ready_; }

  z_stream& stream() { return stream_; }

private:
  z_stream stream_{};
  bool ready_ = false;
};

// Unpacks one member from the front of `bytes`, which afterwards begins behind it.
void unpack_member(std::string_view& bytes,
                   std::string_view name,
                   std::size_t most,
                   std::string& content) {
  Inflation inflation;
  if (!inflation.ready()) {
    refuse(name, "the gzip file cannot be unpacked here", "unpack it and name the file inside");
  }
  z_stream& stream = inflation.stream();
  // Not filled with noughts: a file of many tiny members would spend its time on that.
  std::array<unsigned char, piece> unpacked; // NOLINT(cppcoreguidelines-pro-type-member-init)
  int state = Z_OK;
  while (state != Z_STREAM_END) {
    if (stream.avail_in == 0) {
      const std::size_t next =
          std::min<std::size_t>(bytes.size(), std::numeric_limits<uInt>::max());
      // zlib reads through this pointer only; its type is older than const.
      stream.next_in = reinterpret_cast<unsigned char*>(const_cast<char*>(bytes.data()));
      stream.avail_in = static_cast<uInt>(next);
      bytes.remove_prefix(next);
    }
    stream.next_out = unpacked.data();
    stream.avail_out = static_cast<uInt>(unpacked.size());
    state = inflate(&stream, Z_NO_FLUSH);
    if (state == Z_BUF_ERROR || (state == Z_OK && stream.avail_in == 0 && bytes.empty() &&
                                 stream.avail_out == unpacked.size())) {
      refuse(name, "the gzip file is cut off before its end", "download it again");
    }
    if (state != Z_OK && state != Z_STREAM_END) {
      refuse(name, "the gzip file is damaged", "download it again");
    }
    const std::size_t got = unpacked.size() - stream.avail_out;
    if (got > most - content.size()) {
      refuse(name,
             "the gzip file unpacks to more than 1 GiB",
             "cut it to the station and years you need");
    }
    content.append(reinterpret_cast<const char*>(unpacked.data()), got);
  }
  const char* const rest = reinterpret_cast<const char*>(stream.next_in);
  bytes = {rest, static_cast<std::size_t>(bytes.data() + bytes.size() - rest)};
}

} // namespace

bool is_gzip(std::string_view bytes) {
  return bytes.starts_with(gzip_mark);
}

std::string gunzip(std::string_view bytes, std::string_view name, std::size_t most) {
  std::string content;
  while (is_gzip(bytes)) {
    unpack_member(bytes, name, most, content);
  }
  if (!std::all_of(bytes.begin(), bytes.end(), [](char byte) { return byte == '\0'; })) {
    refuse(name, "bytes that are no gzip follow the end of the gzip file", "download it again");
  }
  return content;
}

} // namespace nightsow::climate
