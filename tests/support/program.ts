/** The program of `npm start` as a process of its own, so that a test can end it as a power cut would. */
import { type ChildProcess, spawn } from 'node:child_process';
import { join, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

export interface Program {
  readonly address: string;
  /** Ends it at once, without a chance to save anything. */
  kill(): Promise<void>;
}

/** Starts it and waits for its address. @param port 0 takes any free one */
export async function startProgram(folder: string, port: number, ...typed: readonly string[]): Promise<Program> {
  const args = [join(root, 'src/run.mjs'), join(root, 'src/workbook/start.ts'), '--folder', folder, ...typed];
  const child = spawn(process.execPath, args, { cwd: root, env: { ...process.env, PORT: String(port) } });
  const address = await addressFrom(child);
  return {
    address,
    kill: () =>
      new Promise((done) => {
        child.once('exit', () => done());
        child.kill('SIGKILL');
      }),
  };
}

function addressFrom(child: ChildProcess): Promise<string> {
  return new Promise((done, fail) => {
    let said = '';
    const hear = (part: Buffer) => {
      said += String(part);
      const [address] = /http:\/\/localhost:\d+\/\S*/.exec(said) ?? [];
      if (address && said.includes('Ctrl+C')) done(address);
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (code) => fail(new Error(`The program ended with ${code}: ${said}`)));
  });
}
