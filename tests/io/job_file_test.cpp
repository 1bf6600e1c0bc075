#include "io/error.h"
#include "io/job/job_reader.h"
#include "tests/io/core_keys.h"
#include "tests/io/scratch_folder.h"

#include <gtest/gtest.h>

#include <fstream>
#include <string>

namespace deadshore::io {
namespace {

// Secure Hash Standard, FIPS 180-4; the digests are those of NIST's example values for SHA-256 and
// of the empty message (from memory; coreutils' sha256sum says the same).
TEST(ReadJobFile, Sha256IsTheStandards) {
  EXPECT_EQ(sha256_of("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  EXPECT_EQ(sha256_of("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  EXPECT_EQ(sha256_of(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(ReadJobFile, HasTheBytesAsTheyAreAndTheNameAlone) {
  const test::ScratchFolder folder;
  const std::string text = "# r\u00e9sum\u00e9\r\n" + core_keys();
  std::ofstream(folder.path() / "yard.toml", std::ios::binary) << text;
  const JobFile file = read_job_file(folder.path() / "yard.toml");
  EXPECT_EQ(file.name, "yard.toml");
  EXPECT_EQ(file.text, text);
}

TEST(ReadJobFile, OneThatIsNotThereIsAFileError) {
  const test::ScratchFolder folder;
  EXPECT_THROW(static_cast<void>(read_job_file(folder.path() / "none.toml")), FileError);
}

TEST(TitleBlock, HoldsWhatIsGivenAndLeavesTheRestBlank) {
  const std::string block =
      "\n[title_block]\nproject = \"Mill cottage\"\nchecked_by = \"C. Engineer\"\n"
      "date = \"2 March 2026\"\n";
  const solver::TitleBlock read = parse_job(core_keys() + block, "yard.toml").title_block;
  EXPECT_EQ(read.project, "Mill cottage");
  EXPECT_EQ(read.checked_by, "C. Engineer");
  EXPECT_EQ(read.date, "2 March 2026");
  EXPECT_EQ(read.client, "");
  EXPECT_EQ(read.prepared_by, "");
  EXPECT_EQ(parse_job(core_keys(), "yard.toml").title_block.project, "");
}

TEST(TitleBlock, AMisspeltKeyIsRefusedWithTheNearest) {
  try {
    static_cast<void>(
        parse_job(core_keys() + "\n[title_block]\nchecker_by = \"C\"\n", "yard.toml"));
    ADD_FAILURE() << "read";
  } catch (const InputError& error) {
    EXPECT_NE(std::string(error.what()).find("checked_by"), std::string::npos) << error.what();
  }
}

}  // namespace
}  // namespace deadshore::io
