/** Files a person hands over, as text, and in plain words what keeps one from being read or written. */
import { readFileSync } from 'node:fs';

/**
 * The text of a file, whichever mark of byte order stands before it.
 *
 * @throws the system's error; `codeOf` says it in words
 */
export function textOfFile(path: string): string {
  const bytes = readFileSync(path);
  // The decoder takes the mark itself away.
  return new TextDecoder(encodingOf(bytes)).decode(bytes);
}

function encodingOf([first, second]: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
}

/** The folder a person stands in: npm runs scripts in the project's folder, and keeps the one it was called from. */
export function standingIn({ npm_lifecycle_event: script, INIT_CWD: folder }: NodeJS.ProcessEnv): string {
  return (script && folder) || process.cwd();
}

/** What kept a file from being read or written, in words where it is a common case. */
export function codeOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
  const plain: Readonly<Record<string, string>> = {
    ENOENT: 'there is no such file',
    EISDIR: 'it is a folder',
    ENOTDIR: 'a part of its path is not a folder',
    EACCES: 'it may not be opened',
    EPERM: 'it may not be opened',
    EROFS: 'nothing can be written there',
    EEXIST: 'a part of its path is a file',
    ENAMETOOLONG: 'its name is too long',
    ELOOP: 'it is a link that leads back to itself',
    ENOSPC: 'no space is left',
  };
  return plain[code] ?? `the system says ${code}`;
}
