// What the program is not meant for: each case ends by itself with one line and the right status,
// and writes nothing.
#include "tests/io/command_line.h"
#include "tests/io/core_keys.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <ostream>
#include <set>
#include <string>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>

namespace deadshore::io {
namespace {

namespace fs = std::filesystem;

using test::CommandLine;
using ::testing::HasSubstr;

/// A job that is analysed in a second, and one that takes long enough to be stopped.
std::string quick_job() {
  return with(with(core_keys(), R"(mesh     = "50 mm")", R"(mesh = "200 mm")"),
              R"(["uncracked", "cracked"])", R"(["uncracked"])");
}
std::string slow_job() {
  return with(core_keys(), R"(mesh     = "50 mm")", R"(mesh = "25 mm")");
}

#ifdef __SANITIZE_ADDRESS__
constexpr bool sanitized = true;
#else
constexpr bool sanitized = false;
#endif

struct HostileRun {
  const char* name;
  const char* before;   ///< shell, to make what is hostile; yard.toml is there, and sound
  const char* command;  ///< shell, with $D for the program
  int code;
  const char* complaint;  ///< part of the one line

  friend void PrintTo(const HostileRun& run, std::ostream* out) { *out << run.command; }
};

class HostileRuns : public CommandLine, public ::testing::WithParamInterface<HostileRun> {
 protected:
  HostileRuns() { write("yard.toml", quick_job()); }

  int shell(const std::string& command) const {
    const std::string line = "cd '" + path("").string() + "' && D='" DEADSHORE_PROGRAM "' && { " +
                             command + "\n} >out.txt 2>err.txt";
    return WEXITSTATUS(std::system(line.c_str()));  // NOLINT(cert-env33-c): commands of this file
  }
  std::set<std::string> names() const {
    std::set<std::string> found;
    for (const auto& entry : fs::directory_iterator(path("")))
      found.insert(entry.path().filename().string());
    return found;
  }
};

TEST_P(HostileRuns, EndInOneLineAndWriteNothing) {
  const HostileRun& run = GetParam();
  if (sanitized && std::string(run.command).find("ulimit -v") != std::string::npos)
    GTEST_SKIP() << "sanitizers take all addresses there are";
  ASSERT_EQ(shell(run.before), 0) << errors();
  const std::set<std::string> before = names();
  EXPECT_EQ(shell(run.command), run.code) << errors();
  EXPECT_TRUE(complained_in_one_line()) << errors();
  EXPECT_THAT(errors(), HasSubstr(run.complaint));
  EXPECT_EQ(names(), before);
}

// Jobs that are no jobs. `printf 'a%.0s' $(seq N)` repeats a text; tr does so for long ones.
constexpr std::array files = {
    HostileRun{"Folder", "mkdir job", "$D run job", 1, "job: is a folder, not a file"},
    HostileRun{"NamedPipe", "mkfifo job", "$D run job", 1, "job: is a pipe or device"},
    HostileRun{"Pipe", ":", "cat yard.toml | $D check /dev/stdin", 1, "is a pipe or device"},
    HostileRun{"EndlessDevice", ":", "$D run /dev/zero", 1, "is a pipe or device"},
    HostileRun{"LinkInACircle", "ln -s b a; ln -s a b", "$D run a", 1, "symbolic links"},
    HostileRun{"LinkToNothing", "ln -s none a", "$D run a", 1, "No such file"},
    HostileRun{"NoName", ":", "$D run ''", 1, "No such file"},
    HostileRun{"LongName", ":", "$D run $(printf 'x%.0s' $(seq 5000))", 1, "name too long"},
    HostileRun{"Empty", ": >job", "$D run job", 1, "job:1: wall: found nothing"},
    HostileRun{"Huge", "head -c 100000000 /dev/zero >job", "$D run job", 1, "larger than 4 MB"},
    HostileRun{"Zeros", "head -c 1000000 /dev/zero >job", "$D run job", 1,
               "job:1: found what is not"},
    HostileRun{"Noise", "head -c 100000 $D >job", "$D run job", 1, "TOML"},
    HostileRun{"NulByte", "cp yard.toml job; printf '\\0' >>job", "$D run job", 1, "not TOML"},
    HostileRun{"Utf16", "iconv -t UTF-16 yard.toml >job", "$D run job", 1,
               "job:1: found what is not"},
    HostileRun{"Latin1", "printf 'title = \"caf\\351\"' >job", "$D run job", 1, "invalid utf-8"},
    HostileRun{"DeepLists", "{ printf 'a = '; head -c 2000000 /dev/zero | tr '\\0' '['; } >job",
               "$D run job", 1, "not TOML"},
    HostileRun{"DeepTables", "{ printf 'a = '; yes '{a=' | head -n 500000 | tr -d '\\n'; } >job",
               "$D run job", 1, "not TOML"},
    HostileRun{"DeepKey", "{ yes a. | head -n 1000000 | tr -d '\\n'; echo 'a = 1'; } >job",
               "$D run job", 1, "job:1: found a key of more than 16 parts"},
    HostileRun{"DeepHeader",
               "{ echo; echo -n [; yes a. | head -n 1000000 | tr -d '\\n'; echo 'a]'; } >job",
               "$D run job", 1, "job:2: found a key of more than 16 parts"},
    HostileRun{"DeepQuotedKey",
               "{ yes '\"a,b\".' | head -n 500000 | tr -d '\\n'; echo 'a = 1'; } >job",
               "$D run job", 1, "found a key of more than 16 parts"},
    HostileRun{"LongTitle",
               "{ printf 'title = \"'; head -c 3000000 /dev/zero | tr '\\0' x; echo '\"'; cat "
               "yard.toml; } | grep -v '^title = .Old' >job",
               "$D run job", 1, "job:1: title: found a text of 3000000 bytes; at most 500"},
    HostileRun{"LongKey", "{ head -c 3000000 /dev/zero | tr '\\0' x; echo ' = 1'; } >job",
               "$D run job", 1, "a key that is not known"},
    HostileRun{"UnseenLetters",
               "{ printf '\\342\\200\\256'; } >mark; sed \"s/\\\"N1\\\"/\\\"N$(cat mark)1\\\"/\" "
               "yard.toml >job",
               "$D run job", 1, "needle[0].name: found a text with U+202E"},
    HostileRun{"EscapeSequence", "sed 's/\"N1\"/\"\\\\u001b[31mN1\"/' yard.toml >job", "$D run job",
               1, "needle[0].name: found a text with U+001B"},
    HostileRun{"ManyNeedles", "{ cat yard.toml; yes '[[needle]]' | head -n 300000; } >job",
               "$D run job", 1, "needle: found 300003 of them; at most 500 [[needle]] are due"},
    HostileRun{"ManyPoints",
               "{ sed '/^thickness/q' yard.toml; printf 'outline = ['; yes '[\"1 m\", \"2 m\"],' | "
               "head -n 100000; echo ']'; } >job",
               "$D check job", 1, "found"},
    HostileRun{"FarTooFine", "sed 's/\"200 mm\"$/\"0.01 mm\"/' yard.toml >job", "$D run job", 1,
               "million elements"},
    HostileRun{"NoMemoryForIt", "sed 's/^mesh.*/mesh = \"10 mm\"/' yard.toml >job",
               "ulimit -v 1500000; $D run job", 1, "mm or more would fit"},
    HostileRun{"TablesMissing", "{ echo 'tables = [\"none.toml\"]'; cat yard.toml; } >job",
               "$D run job", 1, "job:1: tables[0]: found \"none.toml\", which cannot be read"},
    HostileRun{"TablesEndless", "{ echo 'tables = [\"/dev/zero\"]'; cat yard.toml; } >job",
               "$D run job", 1, "job:1: tables[0]: found \"/dev/zero\", which cannot be read"},
    HostileRun{"TablesItself", "{ echo 'tables = [\"job\"]'; cat yard.toml; } >job", "$D run job",
               1, ": found an unknown key; "},
    HostileRun{"TablesNoise",
               "head -c 100000 $D >own; { echo 'tables = [\"own\"]'; cat yard.toml; } >job",
               "$D run job", 1, "TOML"},
    HostileRun{"TablesDeep",
               "{ yes a. | head -n 1000000 | tr -d '\\n'; } >own; { echo 'tables = [\"own\"]'; cat "
               "yard.toml; } >job",
               "$D run job", 1, "own:1: found a key of more than 16 parts"},
    HostileRun{
        "TablesMany",
        "{ printf 'tables = ['; yes '\"own\",' | head -n 4000; echo ']'; cat yard.toml; } >job",
        "$D run job", 1, "job:1: tables: found a list of 4000; at most 20 are due"},
    HostileRun{
        "TablesLong",
        "{ echo '[[ground_group]]'; echo 'source = \"none\"'; echo 'rows = ['; yes '{name=\"a\"},' "
        "| head -n 300000; echo ']'; } >own; { echo 'tables = [\"own\"]'; cat yard.toml; } >job",
        "$D run job", 1, "found a list of 300000; at most 3000 are due"},
};
INSTANTIATE_TEST_SUITE_P(Files, HostileRuns, ::testing::ValuesIn(files),
                         [](const auto& entry) { return entry.param.name; });

constexpr std::array places = {
    HostileRun{"OutIsAFile", ": >out", "$D run yard.toml -o out", 1, "out: is a file"},
    HostileRun{"OutIsADevice", ":", "$D run yard.toml -o /dev/null", 1, "/dev/null: is a file"},
    HostileRun{"OutIsALinkToNothing", "ln -s none out", "$D run yard.toml -o out", 1,
               "out: is a link to what is not there"},
    HostileRun{"OutIsRoot", ":", "$D run yard.toml -o /", 1, "will not be replaced"},
    HostileRun{"OutHoldsTheJob", "mkdir out; cp yard.toml out", "$D run out/yard.toml -o out", 1,
               "will not be replaced"},
    HostileRun{"OutHasALongName", ":", "$D run yard.toml -o $(printf 'x%.0s' $(seq 252))", 1,
               "name too long"},
    HostileRun{"OutIsInNoFolder", ":", "$D run yard.toml -o none/out", 1, "no such folder"},
    HostileRun{"OutIsWhereNobodyMayWrite", ":", "$D run yard.toml -o /proc/out", 1, "/proc/out"},
    HostileRun{"PartialIsSomebodys", "mkdir out.partial; : >out.partial/mine.txt",
               "$D run yard.toml -o out", 1, "holds mine.txt, which no run wrote"},
    HostileRun{"PartialIsALink", "mkdir far; ln -s far out.partial", "$D run yard.toml -o out", 1,
               "out.partial"},
    HostileRun{"FilesMayNotGrow", ":", "ulimit -f 40; $D run yard.toml -o out", 1,
               "File too large"},
    HostileRun{"StdoutClosed", ":", "$D check yard.toml >&-", 1, "standard output: "},
    HostileRun{"StdoutFull", ":", "$D check yard.toml >/dev/full", 1, "No space left on device"},
    HostileRun{"StdoutFullForLongAnswers", ":", "$D keys >/dev/full", 1, "No space left on device"},
    HostileRun{"StdoutFullForHelp", ":", "$D --help >/dev/full", 1, "No space left on device"},
    HostileRun{"StdoutFullForANewJob", ":", "$D new >/dev/full", 1, "No space left on device"},
    HostileRun{"NewIsThereAlready", ":", "$D new yard.toml", 1, "yard.toml: is there already"},
    HostileRun{"NewOnAFolder", "mkdir job", "$D new job --force", 1, "job: Is a directory"},
    HostileRun{"NewOnAFullDevice", ":", "$D new /dev/full --force", 1, "No space left on device"},
    HostileRun{"NewMayNotGrow", "cp yard.toml job",
               "ulimit -f 1; $D new job --force; r=$?; cmp -s job yard.toml || r=99; exit $r", 1,
               "File too large"},
};
INSTANTIATE_TEST_SUITE_P(Places, HostileRuns, ::testing::ValuesIn(places),
                         [](const auto& entry) { return entry.param.name; });

class HostileTimes : public HostileRuns {
 protected:
  HostileTimes() { write("slow.toml", slow_job()); }

  /// Starts a run of slow.toml into `out`; returns once it is at work.
  pid_t start() const {
    const pid_t child = fork();
    if (child == 0) {
      std::signal(SIGINT, SIG_DFL);
      if (chdir(path("").c_str()) != 0 || freopen("child.txt", "w", stderr) == nullptr) _exit(99);
      execl(DEADSHORE_PROGRAM, DEADSHORE_PROGRAM, "run", "slow.toml", "-o", "out", nullptr);
      _exit(99);
    }
    while (!fs::exists(path("out.partial")) && waitpid(child, nullptr, WNOHANG) == 0)
      std::this_thread::sleep_for(std::chrono::milliseconds(10));
    std::this_thread::sleep_for(std::chrono::milliseconds(500));  // into the analysis
    return child;
  }
  static int stop(pid_t child, int signal) {
    kill(child, signal);
    int status = 0;
    waitpid(child, &status, 0);
    return status;
  }
  int run_quick() const { return run("run yard.toml -o out"); }
};

TEST_F(HostileTimes, ASignalEndsARunAtOnceAndCleanly) {
  ASSERT_EQ(run_quick(), 0) << errors();
  const std::string earlier = test::text_of(path("out/results.json"));
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    const int status = stop(start(), signal);
    ASSERT_TRUE(WIFEXITED(status)) << signal;
    EXPECT_EQ(WEXITSTATUS(status), 128 + signal);
    EXPECT_EQ(test::text_of(path("child.txt")),
              "deadshore: stopped; nothing was written, and an earlier result is as it was\n");
    EXPECT_FALSE(fs::exists(path("out.partial")));
    EXPECT_EQ(test::text_of(path("out/results.json")), earlier);
  }
}

TEST_F(HostileTimes, AKilledRunLeavesTheEarlierResultAndTheNextOneClearsUp) {
  ASSERT_EQ(run_quick(), 0) << errors();
  const std::string earlier = test::text_of(path("out/results.json"));
  EXPECT_TRUE(WIFSIGNALED(stop(start(), SIGKILL)));
  EXPECT_EQ(test::text_of(path("out/results.json")), earlier);
  // As if it had got further.
  std::ofstream(path("out.partial/results.json")) << "{";
  EXPECT_EQ(run_quick(), 0) << errors();
  EXPECT_FALSE(fs::exists(path("out.partial")));
  EXPECT_EQ(test::text_of(path("out/results.json")), earlier);
}

TEST_F(HostileTimes, OfTwoRunsIntoOneFolderTheSecondIsRefused) {
  const pid_t first = start();
  EXPECT_EQ(run_quick(), 1);
  EXPECT_TRUE(complained_in_one_line()) << errors();
  EXPECT_THAT(errors(), HasSubstr("another run is writing it"));
  EXPECT_TRUE(fs::exists(path("out.partial")));
  EXPECT_EQ(WEXITSTATUS(stop(first, SIGTERM)), 128 + SIGTERM);
  EXPECT_EQ(run_quick(), 0) << errors();
}

TEST_F(HostileTimes, AReaderThatGoesAwayIsTold) {
  EXPECT_EQ(shell("{ $D schema; echo $? >status; } | true"), 0);
  EXPECT_EQ(test::text_of(path("status")), "1\n");
  EXPECT_THAT(errors(), HasSubstr("Broken pipe"));
}

// What is printed must not end up in a file that took the number of a closed stdout.
TEST_F(HostileTimes, AClosedStdoutIsNoResultFile) {
  EXPECT_EQ(shell("$D run yard.toml -o out >&- <&-"), 1);
  EXPECT_TRUE(complained_in_one_line()) << errors();
  ASSERT_EQ(run("run yard.toml -o again"), 0);
  EXPECT_EQ(test::text_of(path("out/results.json")), test::text_of(path("again/results.json")));
}

TEST_F(HostileTimes, ACarriageReturnAndAByteOrderMarkDoNoHarm) {
  EXPECT_EQ(
      shell("{ printf '\\357\\273\\277'; sed 's/$/\\r/' yard.toml; } >dos.toml; $D check dos.toml"),
      0)
      << errors();
}

TEST_F(HostileTimes, AFileNameThatIsNotTextIsUsedAllTheSame) {
  EXPECT_EQ(
      shell("cp yard.toml $(printf '<b>&\\377.toml'); $D run $(printf '<b>&\\377.toml') -o out"), 0)
      << errors();
}

}  // namespace
}  // namespace deadshore::io
