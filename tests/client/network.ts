/** A network that answers by path, and remembers what it was asked. */

export interface Asked {
  path: string;
  body: unknown;
}

/** Lets the network answer by path; a path that is not named has no signal. An answer may depend on what was asked. */
export function network(answers: Record<string, [number, unknown] | ((body: never) => [number, unknown])>): Asked[] {
  const asked: Asked[] = [];
  globalThis.fetch = async (path, options) => {
    const body: unknown = options?.body ? JSON.parse(String(options.body)) : undefined;
    asked.push({ path: String(path), body });
    const found = answers[String(path)];
    if (!found) throw new TypeError("Failed to fetch");
    const [status, answer] = typeof found === "function" ? found(body as never) : found;
    return new Response(typeof answer === "string" ? answer : JSON.stringify(answer), { status });
  };
  return asked;
}
