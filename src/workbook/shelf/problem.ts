/** Something a person can put right, in a sentence for them. Anything else that is thrown is our mistake. */
export class ShelfProblem extends Error {
  override readonly name = 'ShelfProblem';
  constructor(
    sentence: string,
    /** As in HTTP. */
    readonly status: 400 | 404 | 409 | 413 | 507 = 400,
  ) {
    super(sentence);
  }
}

/** What keeps the disk from taking a file, in words. */
export function diskProblem(failure: unknown): string {
  const { code, message } = (failure ?? {}) as NodeJS.ErrnoException;
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'the disk is full';
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return 'writing is not allowed there';
  if (code === 'EEXIST' || code === 'ENOTDIR') return 'a file stands where a folder is wanted';
  if (code === 'ENOENT') return 'the folder is gone or cannot be made';
  if (code === 'ENAMETOOLONG') return 'the name is too long for this disk';
  return message ?? String(failure);
}

/** For a folder that cannot be made or written to. @throws ShelfProblem, always */
export function noPlaceIn(folder: string): (failure: unknown) => never {
  return (failure) => {
    throw new ShelfProblem(
      `No workbooks can be kept in ${folder}: ${diskProblem(failure)}. Put that right, or name another folder: npm start -- --folder DIR.`,
      507,
    );
  };
}
