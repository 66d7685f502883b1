/** A place in a plan file, as people count: "/plan/parts/0/blocks/1/rate" is "part 1, block 2, rate". */

const COUNTED: Record<string, string> = { parts: "part", blocks: "block", between: "between, block", calls: "call" };
const NAMES: Record<string, string> = { for: "length", two_k_power_fraction: "share of 2 km power", cr10: "effort", split_offset: "offset from the 2 km split" };

/** The words for a JSON pointer (RFC 6901) into `{plan}`; "" for the whole document. */
export function pointerWords(pointer: string): string {
  const steps = pointer.split("/").slice(1).map((step) => step.replaceAll("~1", "/").replaceAll("~0", "~"));
  if (steps[0] === "plan") steps.shift();
  const words: string[] = [];
  for (let at = 0; at < steps.length; at += 1) {
    const counted = COUNTED[steps[at]!];
    const index = /^\d+$/.test(steps[at + 1] ?? "") ? Number(steps[at + 1]) + 1 : 0;
    if (counted && index) at += 1;
    words.push(counted && index ? `${counted} ${index}` : (NAMES[steps[at]!] ?? steps[at]!.replaceAll("_", " ")));
  }
  return words.join(", ");
}
