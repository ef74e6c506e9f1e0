/** A file or a change that is not taken, with the reason in plain words: shown to a nurse as it stands. */
export interface Refusal {
  readonly refused: string;
}

export function isRefusal(answer: object): answer is Refusal {
  return "refused" in answer;
}

/** How a refusal travels inside this folder. It never leaves it: the public functions turn it into a Refusal. */
export class Refused extends Error {}

export function refuse(sentence: string): never {
  throw new Refused(sentence);
}

/** Runs the work; what it refuses becomes an answer. Anything else that is thrown is a fault of ours and stays one. */
export function orRefusal<T>(work: () => T): T | Refusal {
  try {
    return work();
  } catch (problem) {
    if (problem instanceof Refused) return { refused: problem.message };
    throw problem;
  }
}
