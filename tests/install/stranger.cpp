// A program of someone else's that uses the installed libraries: how much does N1 carry by hand?

#include <io/job/job_reader.h>
#include <iostream>
#include <solver/spread/spread.h>

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  const deadshore::solver::Job job = deadshore::io::read_job(argv[1]);
  const auto spread = deadshore::solver::spread_at_45_degrees(job);
  std::cout << job.needles.front().name << ' ' << spread.needles.front().total / 1000.0 << " kN\n";
  return spread.needles.front().total > 0.0 ? 0 : 1;
}
