/**
 * A plan while it is written: its text, what was read from it, and what there is to say about that.
 *
 * The text is the document. It is read by the server at each pause of the keys; an edit of the plan is written into the
 * text here, at once. What was read last stays while the text cannot be read. Every change can be taken back.
 */
import { NoAnswer, Refused, readShorthand } from "../data/api.js";
import { twoKOf, type AthleteRecord } from "../data/athlete.js";
import { appraised, type Appraisal } from "../data/compiling.js";
import { compiledForAnybody } from "../plan/compile.js";
import { describedAfter } from "../plan/eased.js";
import { History } from "../plan/history.js";
import { patched } from "../plan/patch.js";
import { scaled } from "../plan/scale.js";
import type { Mend, Plan, Problem, Timeline } from "../plan/wire.js";
import { written } from "../plan/written.js";

const PAUSE_MS = 300;
/** The server's own bound, in characters. */
export const LONGEST_TEXT = 262_144;
/** Texts whose plans are remembered, so that what is taken back is seen at once. */
const REMEMBERED = 200;

export interface Composed {
  text: string;
  /** Where the caret belongs after a change that was not typed. */
  caret: number | undefined;
  /** The plan read last, and its picture for this athlete; they may lag behind the text, and then `current` is false. */
  plan: Plan | undefined;
  timeline: Timeline | undefined;
  current: boolean;
  /** What is wrong in `problemText`. */
  problems: readonly Problem[];
  problemText: string;
  /** A sentence about the whole, or "". */
  trouble: string;
  /** Nobody could be asked: no signal. */
  unread: boolean;
  /** What was said last; of another version of the plan while `advising`. */
  advice: Appraisal | undefined;
  advising: boolean;
  unadvised: boolean;
  canUndo: boolean;
  canRedo: boolean;
}

export class Composer {
  private readonly history: History;
  private readonly plans = new Map<string, Plan>();
  private shown: Composed;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private asking = new AbortController();

  /** `tell` is called after every change; `keep` is given each text to keep as a draft. */
  constructor(
    text: string,
    private rower: AthleteRecord,
    private readonly tell: (now: Composed) => void,
    private readonly keep: (text: string) => void = () => {},
  ) {
    this.history = new History(text);
    this.shown = {
      text, caret: undefined, plan: undefined, timeline: undefined, current: false, problems: [], problemText: "", trouble: "", unread: false,
      advice: undefined, advising: false, unadvised: false, canUndo: false, canRedo: false,
    };
  }

  get now(): Composed {
    return this.shown;
  }

  /** A plan whose text is known already. */
  know(text: string, plan: Plan): void {
    this.plans.delete(text);
    this.plans.set(text, plan);
    if (this.plans.size > REMEMBERED) this.plans.delete(this.plans.keys().next().value!);
  }

  /** Reads what stands there now, without waiting for a pause. */
  begin(): void {
    this.follow(0);
  }

  type(text: string, now_ms = Date.now()): void {
    this.history.change(text, now_ms);
    this.changed(undefined);
  }

  /** Another text in its place, as one step. */
  put(text: string): void {
    this.history.change(text);
    this.changed(undefined);
  }

  /** The plan is another one now. */
  edit(plan: Plan): void {
    const text = written(plan);
    this.know(text, plan);
    this.history.change(text);
    this.changed(undefined);
  }

  /** Throws PatchError where the mend is for another plan; then nothing has changed. */
  mend({ edits }: Mend): void {
    const { plan } = this.shown;
    if (plan) this.edit(describedAfter(edits, plan, patched(plan, edits)));
  }

  undo(): void {
    if (this.history.canUndo) this.changed(this.history.undo());
  }

  redo(): void {
    if (this.history.canRedo) this.changed(this.history.redo());
  }

  /** Another athlete, or the same with other results. */
  rowedBy(rower: AthleteRecord): void {
    this.rower = rower;
    const { plan } = this.shown;
    if (plan) this.show({ timeline: this.picture(plan) });
    this.follow(0);
  }

  /** The plan of the text as it stands. Throws Refused (its problems say where), NoAnswer. */
  async read(): Promise<Plan> {
    const { text } = this.history;
    const known = this.plans.get(text);
    if (known) return known;
    try {
      const { plan } = await readShorthand(text);
      this.know(text, plan);
      return plan;
    } catch (error) {
      if (text === this.history.text) this.fail(error, text);
      throw error;
    }
  }

  /** What was said about the plan as it stands, if that is known. */
  get advice(): Appraisal | undefined {
    return this.shown.current && !this.shown.advising ? this.shown.advice : undefined;
  }

  close(): void {
    clearTimeout(this.timer);
    this.asking.abort();
  }

  private changed(caret: number | undefined): void {
    const { text } = this.history;
    this.keep(text);
    this.shown = { ...this.shown, caret };
    this.follow(PAUSE_MS);
  }

  /** Shows what is known of the text, and asks for the rest after a pause; what was asked before is given up. */
  private follow(pause_ms: number): void {
    this.close();
    this.asking = new AbortController();
    const { signal } = this.asking;
    const { text } = this.history;
    const known = this.plans.get(text);
    if (known) this.showPlan(text, known);
    else this.show({ text, current: false, trouble: "", unread: false });
    this.timer = setTimeout(() => void (known ? this.advise(known, signal) : this.ask(text, signal)), pause_ms);
  }

  private async ask(text: string, signal: AbortSignal): Promise<void> {
    if (!text.trim()) return this.show(NOTHING);
    try {
      const { plan } = await readShorthand(text, signal);
      if (signal.aborted) return;
      this.know(text, plan);
      this.showPlan(text, plan);
      await this.advise(plan, signal);
    } catch (error) {
      if (!signal.aborted) this.fail(error, text);
    }
  }

  private fail(error: unknown, text: string): void {
    if (error instanceof NoAnswer) this.show({ unread: true });
    else if (error instanceof Refused && error.problems.length) this.show({ problems: error.problems, problemText: text });
    else this.show({ trouble: error instanceof Error ? error.message : String(error) });
  }

  private showPlan(text: string, plan: Plan): void {
    const same = this.shown.plan === plan;
    this.show({
      text, plan, current: true, problems: [], problemText: "", trouble: "", unread: false, advising: true,
      ...(same && this.shown.timeline ? {} : { timeline: this.picture(plan) }),
    });
  }

  private picture(plan: Plan): Timeline {
    return scaled(compiledForAnybody(plan), twoKOf(this.rower), this.rower.athlete.level);
  }

  private async advise(plan: Plan, signal: AbortSignal): Promise<void> {
    const advice = await appraised(plan, this.rower, signal).catch(() => undefined);
    if (!signal.aborted) this.show({ advice, advising: false, unadvised: !advice });
  }

  private show(changes: Partial<Composed>): void {
    const { canUndo, canRedo } = this.history;
    this.shown = { ...this.shown, ...changes, canUndo, canRedo };
    this.tell(this.shown);
  }
}

const NOTHING = {
  plan: undefined, timeline: undefined, current: false, problems: [], problemText: "", trouble: "", unread: false, advice: undefined,
  advising: false, unadvised: false,
};
