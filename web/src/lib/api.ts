/** Talks with the program behind the page. Every trouble comes as a sentence that can be shown as it stands. */

/** A request that was refused or could not be made. */
export class Trouble extends Error {
  constructor(
    sentence: string,
    /** The status of the answer; 0 where there was none because the program does not run. */
    readonly status: number,
    /** What came with it. */
    readonly body: unknown = null,
  ) {
    super(sentence);
  }
}

const AWAY = 'Scuff does not answer. Your text is kept in this page; start Scuff again and it goes on by itself.';

async function send(
  method: string,
  path: string,
  body: BodyInit | null,
  type: string | null,
  signal?: AbortSignal,
): Promise<Response> {
  let answer: Response;
  try {
    answer = await fetch(`/api${path}`, {
      method,
      body,
      headers: type ? { 'Content-Type': type } : {},
      signal: signal ?? null,
      credentials: 'same-origin',
    });
  } catch (e) {
    if (e instanceof DOMException && e.name === 'AbortError') throw e;
    throw new Trouble(AWAY, 0);
  }
  if (answer.ok) return answer;
  let said: unknown = null;
  try {
    said = await answer.json();
  } catch {
    // an answer without words of its own
  }
  const sentence =
    typeof said === 'object' && said !== null && 'sentence' in said && typeof said.sentence === 'string'
      ? said.sentence
      : `Scuff could not do this (${answer.status}). Try again; if it stays, start Scuff again.`;
  throw new Trouble(sentence, answer.status, said);
}

/** Asks. */
export async function get<T>(path: string, signal?: AbortSignal): Promise<T> {
  return (await (await send('GET', path, null, null, signal)).json()) as T;
}

/** Asks with something to look at, or does something. */
export async function post<T>(path: string, body: unknown, signal?: AbortSignal): Promise<T> {
  return (await (await send('POST', path, JSON.stringify(body), 'application/json', signal)).json()) as T;
}

/** Puts something in the place of what was there. */
export async function put<T>(path: string, body: unknown, signal?: AbortSignal): Promise<T> {
  return (await (await send('PUT', path, JSON.stringify(body), 'application/json', signal)).json()) as T;
}

/** Takes something away. */
export async function remove<T>(path: string): Promise<T> {
  return (await (await send('DELETE', path, null, null)).json()) as T;
}

/** Asks for a file; what could not be put into it is told beside it. */
export async function file(
  path: string,
  body: unknown,
  signal?: AbortSignal,
  missing?: (sentence: string) => void,
): Promise<Blob> {
  const answer = await send('POST', path, JSON.stringify(body), 'application/json', signal);
  const said = answer.headers.get('Scuff-Missing');
  if (said) missing?.(decodeURIComponent(said));
  return answer.blob();
}

/** Takes a file along, under the name that the program gives it. */
export async function takeAlong(path: string): Promise<void> {
  const answer = await send('GET', path, null, null);
  const name = /filename\*=UTF-8''([^;]+)/.exec(answer.headers.get('Content-Disposition') ?? '')?.[1];
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await answer.blob());
  link.download = name ? decodeURIComponent(name) : 'scuff';
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** Hands a file over, with the part that has gone, 0 to 1. */
export function upload<T>(
  path: string,
  body: Blob,
  progress: (part: number) => void,
  signal?: AbortSignal,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api${path}`);
    request.setRequestHeader('Content-Type', 'application/octet-stream');
    request.upload.onprogress = (e) => progress(e.lengthComputable ? e.loaded / e.total : 0);
    request.onerror = () => reject(new Trouble(AWAY, 0));
    request.onabort = () => reject(new DOMException('', 'AbortError'));
    request.onload = () => {
      let said: unknown = null;
      try {
        said = JSON.parse(request.responseText);
      } catch {
        // no words
      }
      if (request.status >= 200 && request.status < 300) resolve(said as T);
      else {
        const words = said as { sentence?: string } | null;
        reject(new Trouble(words?.sentence ?? `The file was not taken (${request.status}).`, request.status, said));
      }
    };
    signal?.addEventListener('abort', () => request.abort());
    request.send(body);
  });
}
