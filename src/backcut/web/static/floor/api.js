// Every request to the server, in its one form: data, or a sentence that says what would be right.

/** A request that was refused; its message is a sentence for the coach. */
export class Refusal extends Error {
  /** @param {string} said @param {number} code */
  constructor(said, code) {
    super(said);
    this.code = code;
  }
}

/**
 * Ask the server.
 * @param {string} path below /api
 * @param {{ method?: string, body?: unknown }} [asked]
 * @returns {Promise<{ said: string, data: any }>}
 */
export async function ask(path, asked = {}) {
  const { method = "GET", body } = asked;
  let answer;
  try {
    answer = await fetch("/api" + path, {
      method,
      headers: body === undefined ? {} : { "Content-Type": "application/json" },
      body: body === undefined ? undefined : JSON.stringify(body),
    });
  } catch {
    throw new Refusal("Backcut does not answer. Is it still running in its window? What you did here is kept until it is back.", 0);
  }
  const told = await answer.json().catch(() => null);
  if (!told || !told.ok) throw new Refusal(told ? told.said : "Backcut gave no answer that can be read.", answer.status);
  return told;
}
