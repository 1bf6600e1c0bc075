#include "solver/fem/one_thread.h"

#include <omp.h>

namespace deadshore::solver {

OneThread::OneThread() : threads_before_(omp_get_max_threads()) {
  omp_set_num_threads(1);
}

OneThread::~OneThread() {
  omp_set_num_threads(threads_before_);
}

}  // namespace deadshore::solver
