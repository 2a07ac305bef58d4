/** The page's way to the program that keeps the workbooks. */

/** The program does not answer: it was stopped, or has not started yet. */
export class Unreachable extends Error {
  override readonly name = 'Unreachable';
}

const token = () => document.querySelector<HTMLMetaElement>('meta[name="plank-ledger-token"]')?.content ?? '';

/**
 * Sends a request.
 *
 * @param target such as `open?name=Mill%20Lane`
 * @throws Unreachable where nobody answers, else Error with the program's sentence
 */
export async function request(target: string, body = ''): Promise<Response> {
  const headers = { 'plank-ledger-token': token() };
  const response = await fetch(`workbooks/${target}`, { method: 'POST', headers, body }).catch(() => {
    throw new Unreachable('The program in the terminal does not answer.');
  });
  if (response.ok) return response;
  const { problem } = (await response.json().catch(() => ({}))) as { readonly problem?: string };
  throw new Error(problem ?? `The program answered ${response.status}.`);
}

/** Asks for one of the program's actions. */
export async function ask<Answer>(action: string, sent: object = {}): Promise<Answer> {
  return (await request(action, JSON.stringify(sent))).json() as Promise<Answer>;
}

/** Follows what the program tells, line by line, until it stops. */
export async function follow<News>(target: string, hear: (news: News) => void): Promise<void> {
  const { body } = await request(target);
  const reader = body?.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { done, value } = (await reader?.read().catch(() => undefined)) ?? { done: true, value: undefined };
    if (done) return;
    const lines = (rest + value).split('\n');
    rest = lines.pop() ?? '';
    for (const line of lines) if (line !== '') hear(JSON.parse(line) as News);
  }
}
