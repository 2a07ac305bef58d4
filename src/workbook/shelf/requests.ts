/** The page's requests for workbooks: who may ask, how much may be sent, and what goes back. */
import { timingSafeEqual } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import type { DeskNews } from './desk';
import type { Keeper, Sent } from './keeper';
import { ShelfProblem } from './problem';

/** Everything under this path is for the page alone. */
export const REQUESTS = 'workbooks/';

/** Our choice: far beyond any floor, and small enough to be held in memory a few times. */
const MOST_BYTES = 64 * 1024 * 1024;

/** A quiet line now and then, so that a window notices when the program is gone. */
const ALIVE_MS = 5_000;

const HOSTS = /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d+)?$/i;

/** Whether a request was made to this computer by its own name: another name that leads here is somebody's trick. */
export function isOurHost(request: IncomingMessage): boolean {
  return HOSTS.test(request.headers.host ?? '');
}

/** Only the page has the token, and no page of another address can read it there or send it along. */
function isOurPage({ headers }: IncomingMessage, token: string): boolean {
  const sent = Buffer.from(String(headers['plank-ledger-token'] ?? ''));
  const wanted = Buffer.from(token);
  const isSameOrigin = headers.origin === undefined || headers.origin === `http://${headers.host}`;
  return isSameOrigin && sent.length === wanted.length && timingSafeEqual(sent, wanted);
}

/**
 * Answers one request.
 *
 * @param target what follows `workbooks/`, such as `take?name=Mill%20Lane`
 */
export async function answerRequest(
  keeper: Keeper,
  target: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  try {
    if (request.method !== 'POST' || !isOurPage(request, keeper.token)) {
      sendProblem(response, 403, 'Only the page of this program may ask for workbooks. Load it again.');
      return;
    }
    const [action = '', query = ''] = target.split('?', 2);
    await answerAction(keeper, { action, query: new URLSearchParams(query), request, response });
  } catch (failure) {
    const status = failure instanceof ShelfProblem ? failure.status : 500;
    if (response.headersSent) response.end();
    else sendProblem(response, status, (failure as Error).message);
  }
}

interface Asked {
  readonly action: string;
  readonly query: URLSearchParams;
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
}

async function answerAction(keeper: Keeper, { action, query, request, response }: Asked): Promise<void> {
  const name = query.get('name') ?? '';
  const { desk, actions } = keeper;
  if (action === 'listen') return listen(keeper, name, query.get('since') ?? '', response);
  if (action === 'given') return sendGiven(keeper, response);
  const body = await bodyOf(request);
  if (action === 'open') {
    const { start, data, changes } = await desk.open(name);
    return send(response, `{"start":"${start}","data":${data || 'null'},"changes":[${changes.join(',')}]}`);
  }
  if (action === 'take') return sendAnswer(response, { accepted: await desk.take(name, body) });
  if (!Object.hasOwn(actions, action)) throw new ShelfProblem('There is nothing of this name to ask for.', 404);
  sendAnswer(response, (await actions[action]?.(sentIn(body))) ?? {});
}

function sentIn(body: string): Sent {
  try {
    const sent: unknown = JSON.parse(body || '{}');
    if (typeof sent === 'object' && sent !== null) return sent as Sent;
  } catch {
    // Said below.
  }
  throw new ShelfProblem('The page sent something that cannot be read.');
}

/** @throws ShelfProblem as soon as more is sent than may be */
async function bodyOf(request: IncomingMessage): Promise<string> {
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of request) {
    bytes += (part as Buffer).length;
    if (bytes > MOST_BYTES) throw new ShelfProblem('The workbook is larger than 64 MB: divide it into several.', 413);
    parts.push(part as Buffer);
  }
  return Buffer.concat(parts).toString('utf8');
}

async function listen(keeper: Keeper, name: string, since: string, response: ServerResponse): Promise<void> {
  // What is to be told at once waits until it is known that there is such a workbook.
  const early: DeskNews[] = [];
  let write = (news: DeskNews): void => void early.push(news);
  const stop = await keeper.desk.listen(name, since, (news) => write(news));
  response.writeHead(200, { 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store' });
  write = (news) => void response.write(`${JSON.stringify(news)}\n`);
  early.forEach(write);
  const alive = setInterval(() => response.write('\n'), ALIVE_MS);
  response.on('close', () => {
    clearInterval(alive);
    stop();
  });
  response.write('\n');
}

function sendGiven(keeper: Keeper, response: ServerResponse): void {
  const given = keeper.takeGiven();
  if (!given) throw new ShelfProblem('No file was named on the command line.', 404);
  response.writeHead(200, { 'content-type': 'application/octet-stream', 'cache-control': 'no-store' });
  response.end(given.bytes);
}

function sendAnswer(response: ServerResponse, answer: unknown): void {
  send(response, JSON.stringify(answer));
}

function send(response: ServerResponse, json: string, status = 200): void {
  response.writeHead(status, { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' });
  response.end(json);
}

function sendProblem(response: ServerResponse, status: number, problem: string): void {
  // The rest of what is being sent is of no use.
  response.shouldKeepAlive = false;
  send(response, JSON.stringify({ problem }), status);
}
