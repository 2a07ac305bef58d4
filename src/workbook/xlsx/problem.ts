/** Why a file is not taken in, in a sentence for the person who gave it. */
export class FileProblem extends Error {
  override readonly name = 'FileProblem';
}
