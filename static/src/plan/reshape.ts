/** A plan's parts and blocks put in, taken out and moved about. Nothing given is changed; places are JSON pointers into the plan. */
import type { Part, Plan, Repeat, Step } from "./wire.js";

/** A plan after a change, and where what was changed stands now. */
export interface Reshaped {
  plan: Plan;
  place: string;
}

type Item = Step | Part;

/** The step or part at a place. */
export function itemAt<Found extends Item = Step>(plan: Plan, place: string): Found | undefined {
  return keysOf(place).reduce<unknown>((value, key) => (value as Record<string, unknown> | undefined)?.[key], plan) as Found | undefined;
}

export function replaced(plan: Plan, place: string, item: Item): Plan {
  return changed(plan, (copy) => {
    const [list, index] = seat(copy, place);
    list[index] = item;
  });
}

/** Before what stands at the place, or at the end of its list. */
export function inserted(plan: Plan, place: string, item: Item): Plan {
  return changed(plan, (copy) => {
    const [list, index] = seat(copy, place);
    list.splice(index, 0, structuredClone(item));
  });
}

/** Without it; a repeat or a part that is left with nothing goes too. */
export function removed(plan: Plan, place: string): Plan {
  return changed(plan, (copy) => {
    const [list, index] = seat(copy, place);
    list.splice(index, 1);
    tidy(copy);
  });
}

/** The same once more, behind it. */
export function doubled(plan: Plan, place: string): Reshaped {
  const after = following(place);
  return { plan: inserted(plan, after, itemAt(plan, place)!), place: after };
}

/** Rowed several times, from now on. */
export function repeated(plan: Plan, place: string, times: number): Plan {
  return replaced(plan, place, { times, blocks: [itemAt(plan, place)!] });
}

/** A repeat's blocks in its place, rowed once; what came between goes. */
export function unrolled(plan: Plan, place: string): Plan {
  return changed(plan, (copy) => {
    const [list, index] = seat(copy, place);
    list.splice(index, 1, ...(list[index] as Repeat).blocks);
  });
}

/** One place up or down: blocks go into repeats and out of them and from part to part, repeats pass each other. */
export function moved(plan: Plan, place: string, by: -1 | 1): Reshaped | undefined {
  const target = targetOf(plan, place, by);
  return target === undefined ? undefined : movedTo(plan, place, target);
}

export function canMove(plan: Plan, place: string, by: -1 | 1): boolean {
  return targetOf(plan, place, by) !== undefined;
}

/** Before what stands at `target`; undefined where it would stand in itself. */
export function movedTo(plan: Plan, place: string, target: string): Reshaped | undefined {
  if (target.startsWith(`${place}/`) || isPart(place) !== isPart(target)) return undefined;
  const copy = structuredClone(plan);
  const [from, at] = seat(copy, place);
  const [to, index] = seat(copy, target);
  const [item] = from.splice(at, 1);
  to.splice(from === to && index > at ? index - 1 : index, 0, item!);
  tidy(copy);
  return { plan: copy, place: placeOf(copy, item!) };
}

/** The place behind this one in the same list. */
export function following(place: string): string {
  return beside(place, 1);
}

function isPart(place: string): boolean {
  return keysOf(place).length === 2;
}

function targetOf(plan: Plan, place: string, by: -1 | 1): string | undefined {
  return isPart(place) ? partBeside(plan, place, by) : stepBeside(plan, place, by);
}

function partBeside(plan: Plan, place: string, by: -1 | 1): string | undefined {
  const index = indexIn(place);
  const there = by < 0 ? index - 1 : index + 2;
  return there < 0 || there > plan.parts.length ? undefined : `/parts/${there}`;
}

function stepBeside(plan: Plan, place: string, by: -1 | 1): string | undefined {
  const [list, index] = seat(plan, place);
  const next = list[index + by];
  if (!next) return outOf(plan, place, by);
  const entered = !isRepeat(list[index]!) && isRepeat(next);
  if (!entered) return beside(place, by < 0 ? -1 : 2);
  const inside = beside(place, by);
  if (by > 0) return `${inside}/blocks/0`;
  return next.between?.length ? `${inside}/between/${next.between.length}` : `${inside}/blocks/${next.blocks.length}`;
}

/** Where one comes to past the first or the last of a list. */
function outOf(plan: Plan, place: string, by: -1 | 1): string | undefined {
  const list = keysOf(place).at(-2)!;
  const holder = around(place);
  if (isPart(holder)) return intoPart(plan, indexIn(holder) + by, by);
  const repeat = itemAt<Repeat>(plan, holder)!;
  if (list === "between") return by < 0 ? `${holder}/blocks/${repeat.blocks.length}` : following(holder);
  if (by > 0 && repeat.between?.length) return `${holder}/between/0`;
  return by < 0 ? holder : following(holder);
}

/** Into the nearest part that is rowed. */
function intoPart(plan: Plan, index: number, by: -1 | 1): string | undefined {
  const part = plan.parts[index];
  if (!part) return undefined;
  if (part.kind === "gap") return intoPart(plan, index + by, by);
  return `/parts/${index}/blocks/${by > 0 ? 0 : part.blocks.length}`;
}

function isRepeat(item: Item): item is Repeat {
  return "times" in item;
}

function changed(plan: Plan, change: (copy: Plan) => void): Plan {
  const copy = structuredClone(plan);
  change(copy);
  return copy;
}

function seat(plan: Plan, place: string): [list: Item[], index: number] {
  const keys = keysOf(place);
  const index = Number(keys.pop());
  return [keys.reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], plan) as Item[], index];
}

/** Leaves out what holds nothing any more; of a repeat that lost its blocks, what came between stays. */
function tidy(plan: Plan): void {
  const tidied = (steps: readonly Step[]): Step[] => steps.flatMap((step) => (isRepeat(step) ? tidiedRepeat(step, tidied) : [step]));
  plan.parts = plan.parts.flatMap((part): Part[] => {
    if (part.kind === "gap") return [part];
    part.blocks = tidied(part.blocks);
    return part.blocks.length ? [part] : [];
  });
}

function tidiedRepeat(repeat: Repeat, tidied: (steps: readonly Step[]) => Step[]): Step[] {
  const [blocks, between] = [tidied(repeat.blocks), tidied(repeat.between ?? [])];
  repeat.blocks = blocks.length ? blocks : between;
  if (blocks.length && between.length) repeat.between = between;
  else delete repeat.between;
  return repeat.blocks.length ? [repeat] : [];
}

function placeOf(plan: Plan, item: Item): string {
  const search = (items: readonly Item[], place: string): string => {
    for (const [index, each] of items.entries()) {
      const here = `${place}/${index}`;
      if (each === item) return here;
      const lists = each as { blocks?: Step[]; between?: Step[] };
      const found = search(lists.blocks ?? [], `${here}/blocks`) || search(lists.between ?? [], `${here}/between`);
      if (found) return found;
    }
    return "";
  };
  return search(plan.parts, "/parts");
}

function keysOf(place: string): string[] {
  return place.split("/").slice(1);
}

function indexIn(place: string): number {
  return Number(keysOf(place).at(-1));
}

function beside(place: string, by: number): string {
  return place.replace(/\d+$/, (index) => String(Number(index) + by));
}

/** The part or repeat whose list this place is in. */
function around(place: string): string {
  return place.split("/").slice(0, -2).join("/");
}
