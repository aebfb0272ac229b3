#include "climate/archive/sidecar.hpp"

#include "climate/archive/http.hpp"

#include <date/date.h>
#include <gtest/gtest.h>

namespace nightsow::climate {
namespace {

const std::chrono::system_clock::time_point now =
    date::sys_days{date::year{2026} / 3 / 1} + std::chrono::hours{6} + std::chrono::seconds{7};

TEST(Sidecar, WhatIsWrittenIsReadAgain) {
  const Sidecar sidecar{"an archive",
                        "https://archive.invalid/a?b=1&c=2",
                        "name it",
                        "2026-03-01T06:00:00Z",
                        "2026-03-02T06:00:00Z",
                        "W/\"a\\b\"",
                        "Sun, 01 Mar 2026 06:00:00 GMT",
                        "00ff",
                        12345};
  EXPECT_EQ(read_sidecar(to_text(sidecar)), sidecar);
}

TEST(Sidecar, AnotherTextIsNone) {
  for (const char* text : {"",
                           "{",
                           "[]",
                           "{}",
                           R"({"url": "a", "sha256": "b"})",
                           R"({"url": "a", "sha256": "b", "bytes": -1})",
                           R"({"url": 3, "sha256": "b", "bytes": 1})"}) {
    EXPECT_EQ(read_sidecar(text), std::nullopt) << text;
  }
}

TEST(Sidecar, ATagThatIsNoUtf8CanStillBeKept) {
  Sidecar sidecar;
  sidecar.url = "https://archive.invalid";
  sidecar.sha256 = "00";
  sidecar.etag = "\"\xFF\"";
  EXPECT_TRUE(read_sidecar(to_text(sidecar)));
}

TEST(Sidecar, TheHashIsSha256) {
  // source: FIPS 180-4 examples, "abc" (SHA-256)
  EXPECT_EQ(sha256_of("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
}

TEST(Sidecar, AgesAreCountedInDays) {
  EXPECT_EQ(format_instant(now), "2026-03-01T06:00:07Z");
  EXPECT_EQ(age_in_days("2026-02-27T23:59:59Z", now), 2);
  EXPECT_EQ(age_in_days(format_instant(now), now), 0);
  EXPECT_EQ(age_in_days("2030-01-01T00:00:00Z", now), 0);
  EXPECT_EQ(age_in_days("lately", now), std::nullopt);
}

TEST(MayBeFetched, HttpsAnywhereAndHttpOnThisMachineOnly) {
  for (const char* url : {"https://archive.invalid/a",
                          "http://127.0.0.1:8080/a",
                          "http://localhost/a",
                          "http://[::1]:80/a"}) {
    EXPECT_TRUE(may_be_fetched(url)) << url;
  }
  for (const char* url : {"http://archive.invalid/a",
                          "http://127.0.0.1.archive.invalid/a",
                          "http://localhost@archive.invalid/a",
                          "http://localhost.archive.invalid/",
                          "ftp://127.0.0.1/a",
                          "file:///a",
                          "a",
                          ""}) {
    EXPECT_FALSE(may_be_fetched(url)) << url;
  }
}

} // namespace
} // namespace nightsow::climate
