// The sentence of whatever was thrown: ours are Errors with one.

/** @param {unknown} problem */
export function sentenceOf(problem) {
  return problem instanceof Error ? problem.message : String(problem);
}
